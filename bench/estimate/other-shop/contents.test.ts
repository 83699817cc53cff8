import { expect, test } from 'vitest'
import { flow, mix, percentOf, portion, together } from './contents.ts'

const still = { depletion: 0, scum: 0, chips: 0 }
const tap = { hardness: 250, salts: 100 }
/** 200 L at 8 %: 16 L concentrate and 184 L water, 184 × 250 = 46000 mg. */
const sump = mix(200, 8, 0, tap, 2)

test('a mix holds its concentrate, and its water the minerals', () => {
  expect(sump).toEqual({ litres: 200, concentrate: [16, 0], hardness: 46000, salts: 18400 })
})

test('a top-up with another product is kept apart from it and counts with it', () => {
  // 16 L + 50 L × 4 % = 18 L in 250 L: 7.2 %; 46000 mg + 48 L × 250 mg/L = 58000 mg.
  const both = together(sump, mix(50, 4, 1, tap, 2))
  expect(both.concentrate).toEqual([16, 2])
  expect(percentOf(both)).toBeCloseTo(7.2, 12)
  expect(both.hardness).toBeCloseTo(58000, 9)
})

test('a draw-off leaves the strength as it was', () => {
  const left = portion(sump, 150)
  expect(left.concentrate[0]).toBeCloseTo(12, 12)
  expect(left.hardness).toBeCloseTo(34500, 9)
})

test('evaporation takes water alone', () => {
  // 40 L in 20 hours: 16 L in 160 L = 10 %; all 46000 mg stay.
  const left = flow(sump, { evaporation: 2, carryOff: 0 }, 20, still, 0)
  expect(left.litres).toBeCloseTo(160, 12)
  expect(percentOf(left)).toBeCloseTo(10, 12)
  expect(left.hardness).toBeCloseTo(46000, 9)
})

test('of evaporation and carry-off in equal parts the concentrate keeps the root of the volume kept', () => {
  // dM/dt = −D·M/V with V from 200 to 128 L: M = 16 · (128/200)^(1/2) = 16 · 0.8 = 12.8 L.
  const left = flow(sump, { evaporation: 1.5, carryOff: 1.5 }, 24, still, 0)
  expect(left.litres).toBeCloseTo(128, 12)
  expect(left.concentrate[0]).toBeCloseTo(12.8, 12)
})

test('two halves of a time come to the whole of it', () => {
  const flows = { evaporation: 1.1, carryOff: 0.4 }
  const wear = { depletion: 0.01, scum: 0.02, chips: 0 }
  const whole = flow(sump, flows, 24, wear, 0)
  const halves = flow(flow(sump, flows, 12, wear, 0), flows, 12, wear, 0)
  expect(halves.litres).toBeCloseTo(whole.litres, 10)
  expect(halves.concentrate[0]).toBeCloseTo(whole.concentrate[0]!, 10)
  expect(halves.hardness).toBeCloseTo(whole.hardness, 6)
})

test('used-up concentrate is gone as concentrate, not as litres', () => {
  // 10 days at 1 % a day: 16 · e^(−0.1) = 14.4774 L good concentrate in the same 200 L.
  const left = flow(sump, { evaporation: 0, carryOff: 0 }, 240, { ...still, depletion: 0.01 }, 0)
  expect(left.litres).toBe(200)
  expect(left.concentrate[0]).toBeCloseTo(14.4774, 4)
})

test('the pumps lose nothing more once they draw air', () => {
  expect(flow(sump, { evaporation: 30, carryOff: 30 }, 24, still, 20).litres).toBe(20)
})

test('topped up all the time, a sump comes to the cycles of a cooling tower', () => {
  // 6 L evaporated and 3 L carried off a day: (6+3)/3 = 3 cycles of 250 mg/L (UFC 3-240-13FN); time constant 200/3 = 67 days.
  let left = mix(200, 0, 0, tap, 1)
  for (let hour = 0; hour < 24 * 1000; hour++) {
    left = flow(left, { evaporation: 6 / 24, carryOff: 3 / 24 }, 1, still, 0)
    left = together(left, mix(200 - left.litres, 0, 0, tap, 1))
  }
  expect(left.hardness / left.litres).toBeGreaterThan(748)
  expect(left.hardness / left.litres).toBeLessThan(752)
})
