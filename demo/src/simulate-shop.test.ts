import { expect, test } from 'vitest'
import { simulateShop } from './simulate-shop.ts'

const until = '2026-10-07T10:00:00+02:00'
const { truth } = simulateShop({ until })

test.each([...truth])('what ever came into %s is what is left and what left it, to 1e-9', (_, sump) => {
  const sum = (quantity: 'volume' | 'concentrate' | 'hardness', sign: 1 | -1) =>
    sump.flows.reduce((total, flow) => total + Math.max(0, sign * flow[quantity]), 0)
  for (const quantity of ['volume', 'concentrate'] as const) {
    expect(Math.abs(sum(quantity, 1) - sum(quantity, -1) - sump[quantity])).toBeLessThan(1e-9)
  }
  // Milligrams by the million: the same relative to what came in.
  const came = sum('hardness', 1)
  expect(Math.abs(came - sum('hardness', -1) - sump.hardness)).toBeLessThanOrEqual(1e-9 * Math.max(1, came))
})

test.each([...truth])('%s is never empty, never over its brim, and its concentrate fits into it', (_, sump) => {
  let volume = 0
  let concentrate = 0
  const days = new Map<number, { volume: number; concentrate: number }>()
  for (const flow of sump.flows) {
    volume += flow.volume
    concentrate += flow.concentrate
    days.set(flow.day, { volume, concentrate })
  }
  for (const [day, end] of days) {
    expect(end.volume, `day ${day}`).toBeGreaterThan(0)
    expect(end.concentrate, `day ${day}`).toBeGreaterThan(0)
    expect(end.concentrate, `day ${day}`).toBeLessThanOrEqual(end.volume * (1 + 1e-12))
  }
})

test('minerals and concentrate leave in the proportion of the fluid, and evaporation takes neither', () => {
  for (const { flows } of truth.values()) {
    const evaporated = flows.filter(({ kind }) => kind === 'evaporated')
    expect(evaporated.length).toBeGreaterThan(200)
    for (const flow of evaporated) expect([flow.concentrate, flow.hardness]).toEqual([0, 0])
  }
})

test('a bucket carried from one sump arrives in the other', () => {
  const moved = (id: string, kind: string) =>
    truth
      .get(id)!
      .flows.filter((flow) => flow.kind === kind)
      .map(({ day, volume, concentrate }) => [day, Math.abs(volume), Math.abs(concentrate).toFixed(9)])
  expect(moved('tc1', 'moved-out')).toHaveLength(2)
  expect(moved('lathe12', 'moved-in')).toEqual(moved('tc1', 'moved-out'))
})

test('one sump is cleaned out half way: nearly all of it leaves on one day, in two drains', () => {
  const drained = truth
    .get('mill8')!
    .flows.filter(({ kind, day, volume }) => kind === 'drawn-off' && day > 100 && volume < -360)
  expect(drained).toHaveLength(1)
})

test.each([-1, 1.5, Number.NaN, 2 ** 32])('a seed of %d is refused by name', (seed) => {
  expect(() => simulateShop({ seed, until })).toThrow(/seed must be/)
})

test('an end without offset is refused by name', () => {
  expect(() => simulateShop({ until: '2026-10-07' })).toThrow(/until must be a time with offset/)
})
