import { expect, test } from 'vitest'
import type { Setup } from '../schema/entries/index.ts'
import { thingHistory } from './things.ts'

const base = [
  { kind: 'shop', id: 'shop', body: { name: 'Works', timeZone: 'Europe/Berlin' } },
  { kind: 'sump', id: 's1', body: { id: 's1', name: 'Mill', fluid: 'f1', fillVolume: 200 } },
]
let count = 0
const setup = (changes: Record<string, unknown>, more: Partial<Setup> = {}): Setup => ({
  id: `00000000-0000-4000-8000-${String(++count).padStart(12, '0')}`,
  at: '2026-03-03T09:00:00Z',
  kind: 'setup',
  about: { kind: 'sump', id: 's1' },
  changes,
  ...more,
})
const markAt = (setups: Setup[], at?: string) => thingHistory(base, setups).at(at).sump.get('s1')?.fillVolume

test('a moved mark never rewrites the past', () => {
  const moved = setup({ fillVolume: 220 })
  expect(markAt([moved], '2026-03-03T08:59:59.999Z')).toBe(200)
  expect(markAt([moved], '2026-03-03T09:00:00.000Z')).toBe(220)
  expect(markAt([moved])).toBe(220)
})

test('a change holds from the day it names, in the zone of the shop', () => {
  const moved = setup({ fillVolume: 220 }, { from: '2026-03-10' })
  expect(markAt([moved], '2026-03-09T22:59:59.999Z')).toBe(200)
  expect(markAt([moved], '2026-03-09T23:00:00.000Z')).toBe(220)
})

test('of two changes the one that holds from later wins, in whatever order they arrive', () => {
  const first = setup({ fillVolume: 210 }, { from: '2026-03-01' })
  const second = setup({ fillVolume: 230 }, { from: '2026-03-05' })
  expect(markAt([first, second])).toBe(230)
  expect(markAt([second, first])).toBe(230)
  expect(markAt([second, first], '2026-03-02T00:00:00.000Z')).toBe(210)
})

test('what a field was stands in the change', () => {
  const moved = setup({ fillVolume: 220 }, { was: { fillVolume: 190 } })
  expect(markAt([moved], '2026-01-01T00:00:00.000Z')).toBe(190)
})

test('a field nobody had told before has its first value from the beginning', () => {
  const told = setup({ minVolume: 40 })
  expect(thingHistory(base, [told]).at('2026-01-01T00:00:00.000Z').sump.get('s1')?.minVolume).toBe(40)
})

test('null takes a value away', () => {
  expect(
    thingHistory(base, [setup({ fillVolume: null })])
      .at()
      .sump.get('s1'),
  ).toEqual({ id: 's1', name: 'Mill', fluid: 'f1' })
})

test('a thing can begin with a set-up entry', () => {
  const begun = setup({ name: 'Lathe', fluid: 'f1' }, { about: { kind: 'sump', id: 's2' } })
  expect(thingHistory(base, [begun]).at().sump.get('s2')).toEqual({ id: 's2', name: 'Lathe', fluid: 'f1' })
})

test('a thing that lacks what it needs is not there yet', () => {
  const half = setup({ name: 'Lathe' }, { about: { kind: 'sump', id: 's2' } })
  expect(thingHistory(base, [half]).at().sump.has('s2')).toBe(false)
})

test('a shop that says nothing is metric, in UTC', () => {
  expect(thingHistory([], []).at().shop).toEqual({ name: '', timeZone: 'UTC', units: 'metric', currency: 'EUR' })
})
