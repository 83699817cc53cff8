import { expect, test } from 'vitest'
import type { BenchBook, BenchEntry } from '../book.ts'
import { plainFilter } from './plain-filter.ts'

const dayMs = 86_400_000
const startMs = Date.parse('2025-03-03T06:00:00Z')
const at = (days: number) => new Date(startMs + days * dayMs).toISOString()
const bookWith = (entries: Omit<BenchEntry, 'id'>[]): BenchBook => ({
  format: 'sumpbook-book/1',
  shop: {
    name: 'Test',
    timeZone: 'UTC',
    units: 'metric',
    currency: 'EUR',
    workDays: [1, 2, 3, 4, 5, 6, 7],
    shutdowns: [],
  },
  fluids: [
    {
      id: 'f1',
      name: 'F',
      brixFactor: 1,
      maxMixStrength: 15,
      limits: { concentration: { low: 6, target: 8, high: 10 } },
    },
  ],
  waters: [{ id: 'di', name: 'Deionised', kind: 'deionised', hardness: 0 }],
  sumps: [{ id: 's1', name: 'S', kind: 'stand-alone', fluid: 'f1', fillVolume: 200 }],
  instruments: [],
  meters: [],
  entries: entries.map((entry, i) => ({ id: `e${i}`, ...entry }) as BenchEntry),
})

const charge = {
  at: at(0),
  kind: 'charge',
  sump: 's1',
  volume: 200,
  strength: 8,
  water: 'di',
  fluid: 'f1',
  heldBack: 0,
}
/** Every day 4 L of water and 1 L of fluid go, and 200 L are made up again: 8 % needs 5 L at 1.6 %. */
const steady = Array.from({ length: 90 }, (_, day) => [
  { at: at(day + 1), kind: 'reading', sump: 's1', brix: 8.26, volume: 195 },
  { at: at(day + 1), kind: 'addition', sump: 's1', volume: 5, strength: 1.6, water: 'di' },
]).flat()
const filter = plainFilter({ name: 'plain', gate: 4, losses: null })
const ask = (entries: Omit<BenchEntry, 'id'>[], days: number) =>
  filter.estimate(bookWith(entries), { atMs: startMs + days * dayMs, aheadDays: [7] }).get('s1')!

test('losses that never change are learnt from readings and pours', () => {
  // 200 L at 8 %, less 4 L water and 1 L fluid: 15.92 L concentrate in 195 L = 8.16 %, and 0.1 °Brix of bias on top.
  const { now } = ask([charge, ...steady], 90.01)
  expect(now.evaporation.mean + now.carryOff.mean).toBeGreaterThan(4.6)
  expect(now.evaporation.mean + now.carryOff.mean).toBeLessThan(5.4)
  expect(now.volume.mean).toBeGreaterThan(196)
  expect(now.volume.mean).toBeLessThan(204)
  expect(now.concentration.low90).toBeLessThan(8)
  expect(now.concentration.high90).toBeGreaterThan(8)
})

test('left alone, the sump is expected to lose its week and to get stronger', () => {
  const { now, ahead } = ask([charge, ...steady], 90.01)
  expect(now.volume.mean - ahead[0]!.volume.mean).toBeGreaterThan(30)
  expect(now.volume.mean - ahead[0]!.volume.mean).toBeLessThan(40)
  expect(ahead[0]!.concentration.mean).toBeGreaterThan(now.concentration.mean + 0.5)
  expect(ahead[0]!.concentration.sd).toBeGreaterThan(now.concentration.sd)
})

test('a slipped point is left out once and named, and what comes after the instant is not used', () => {
  const slipped = { at: at(90.5), kind: 'reading', sump: 's1', brix: 82 }
  const later = { at: at(95), kind: 'reading', sump: 's1', brix: 3 }
  const without = ask([charge, ...steady], 91.01)
  const { now, doubts } = ask([charge, ...steady, slipped, later], 91.01)
  expect(doubts).toMatchObject([{ kind: 'misread', entry: `e${1 + steady.length}` }])
  expect(now.concentration.mean).toBeCloseTo(without.now.concentration.mean, 2)
})

test('an empty history gives wide figures, not none', () => {
  const { now } = ask([], 10)
  expect(now.concentration.mean).toBeCloseTo(8, 6)
  expect(now.concentration.sd).toBeGreaterThan(1)
  expect(now.volume.mean).toBeCloseTo(184, 6)
})
