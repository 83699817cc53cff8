import { expect, test } from 'vitest'
import { type SumpEvent, standingAfter } from './standing.ts'

const charge = (volume: number | null, strength: number | null, heldBack = 0): SumpEvent => ({
  kind: 'charge',
  volume,
  strength,
  heldBack,
})
const pour = (volume: number | null, strength: number | null, toMark: number | null = null): SumpEvent => ({
  kind: 'addition',
  volume,
  strength,
  toMark,
})
const read = (concentration: number | null, volume: number | null, sd = 0): SumpEvent => ({
  kind: 'reading',
  concentration: concentration === null ? null : { mean: concentration, sd },
  volume: volume === null ? null : { mean: volume, sd },
})
const draw = (volume: number | null): SumpEvent => ({ kind: 'drawoff', volume })
const after = (...events: SumpEvent[]) => {
  const { volume, concentration } = standingAfter(events)
  return { volume: volume?.mean ?? null, concentration: concentration?.mean ?? null }
}

test('nothing written down is nothing known', () => {
  expect(after()).toEqual({ volume: null, concentration: null })
})

test('a charge sets volume and concentration', () => {
  expect(after(charge(200, 8))).toEqual({ volume: 200, concentration: 8 })
})

test('a reading counts from then on, each of its two figures by itself', () => {
  expect(after(charge(200, 8), read(9, null))).toEqual({ volume: 200, concentration: 9 })
  expect(after(charge(200, 8), read(null, 150))).toEqual({ volume: 150, concentration: 8 })
})

// 150 L at 6 % and 50 L at 10 %: (900 + 500) / 200 = 7 %.
test('what is poured is mixed in', () => {
  expect(after(read(6, 150), pour(50, 10))).toEqual({ volume: 200, concentration: 7 })
})

test('filled to the mark, the amount is what was missing', () => {
  expect(after(read(6, 150), pour(null, 10, 200))).toEqual({ volume: 200, concentration: 7 })
  expect(after(read(6, 210), pour(null, 10, 200))).toEqual({ volume: 210, concentration: 6 })
})

test('a pour of unknown amount leaves nothing known, one of unknown strength leaves the volume', () => {
  expect(after(read(6, 150), pour(null, 10))).toEqual({ volume: null, concentration: null })
  expect(after(read(6, 150), pour(50, null))).toEqual({ volume: 200, concentration: null })
  expect(after(read(6, null), pour(50, 10))).toEqual({ volume: null, concentration: null })
  expect(after(read(6, null), pour(null, 10, 200))).toEqual({ volume: null, concentration: null })
})

test('a pour of nothing changes nothing', () => {
  expect(after(read(6, 150), pour(0, null))).toEqual({ volume: 150, concentration: 6 })
})

test('what is drawn off leaves at the sump’s own concentration, never below an empty sump', () => {
  expect(after(read(6, 150), draw(50))).toEqual({ volume: 100, concentration: 6 })
  expect(after(read(6, 150), draw(500))).toEqual({ volume: 0, concentration: 6 })
  expect(after(read(6, 150), draw(null))).toEqual({ volume: null, concentration: 6 })
  expect(after(read(6, null), draw(50))).toEqual({ volume: null, concentration: 6 })
})

// Heel: 20 L at 10 % and 180 L at 5 %: 1100 / 200 = 5.5 %.
test('a heel keeps what the sump held', () => {
  expect(after(charge(200, 10), charge(180, 5, 20))).toEqual({ volume: 200, concentration: 5.5 })
  expect(after(charge(180, 5, 20))).toEqual({ volume: 200, concentration: null })
  expect(after(charge(null, 5))).toEqual({ volume: null, concentration: 5 })
  expect(after(charge(200, 10), charge(null, 5, 20))).toEqual({ volume: null, concentration: null })
  expect(after(charge(null, null))).toEqual({ volume: null, concentration: null })
})

test('an empty sump that is filled has the strength of the fill', () => {
  expect(after(read(6, 150), draw(150), pour(100, 4))).toEqual({ volume: 100, concentration: 4 })
})

test('a transfer brings what it carries', () => {
  expect(after(read(5, 100), { kind: 'transfer-in', volume: 100, concentration: 9 })).toEqual({
    volume: 200,
    concentration: 7,
  })
})

// 150 L ± 10 at 6 % ± 0.4 and 50 L at 10 %: 7 %, share 0.75; by volume (6 − 7) / 200 × 10 = −0.05; √(0.3² + 0.05²).
test('the doubts are carried through a pour', () => {
  const event: SumpEvent = { kind: 'reading', concentration: { mean: 6, sd: 0.4 }, volume: { mean: 150, sd: 10 } }
  const { volume, concentration } = standingAfter([event, pour(50, 10)])
  expect(volume).toMatchObject({ mean: 200, sd: 10 })
  expect(concentration!.sd).toBeCloseTo(Math.hypot(0.3, 0.05), 12)
  expect(concentration!.low90).toBeCloseTo(7 - 1.6448536269514722 * Math.hypot(0.3, 0.05), 10)
  expect(concentration!.high90).toBeCloseTo(7 + 1.6448536269514722 * Math.hypot(0.3, 0.05), 10)
})

test('an interval keeps to what can be', () => {
  expect(standingAfter([read(1, 10, 50)])).toMatchObject({
    volume: { low90: 0 },
    concentration: { low90: 0, high90: 1 + 1.6448536269514722 * 50 },
  })
  expect(standingAfter([read(90, 10, 50)]).concentration!.high90).toBe(100)
})
