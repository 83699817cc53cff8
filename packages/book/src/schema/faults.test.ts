import { expect, test } from 'vitest'
import { entry } from './entries/index.ts'
import { faultsOf, pointerOf } from './faults.ts'

const good = {
  id: '00000000-0000-4000-8000-000000000001',
  at: '2026-03-03T09:30:00+01:00',
  kind: 'reading',
  sump: 's1',
}

const faultsOfEntry = (fields: Record<string, unknown>) => {
  const input = { ...good, ...fields }
  const result = entry.safeParse(input)
  return result.success ? [] : faultsOf(result.error, input)
}

test.each([
  ['a Brix above the scale', { brix: 95.1 }, '/brix', '95.1', 'at most 95'],
  ['a pH of 19', { ph: 19 }, '/ph', '19', 'at most 14'],
  ['a negative volume', { volume: -1 }, '/volume', '-1', 'at least 0'],
  [
    'text for a number',
    { temperature: 'warm' },
    '/temperature',
    '"warm"',
    'a number, or a class: {"low": 25, "high": 50}, {"below": 1000} or {"atLeast": 10000000}',
  ],
  ['a class the wrong way round', { hardness: { low: 50, high: 25 } }, '/hardness/high', '25', 'low below high'],
  ['a class out of range', { hardness: { below: -4 } }, '/hardness/below', '-4', 'at least 0'],
  [
    'a day for an instant',
    { at: '2026-03-03' },
    '/at',
    '"2026-03-03"',
    'a time with offset, such as 2026-03-03T09:30:00+01:00',
  ],
  [
    'an impossible day',
    { at: '2026-02-30T09:30:00Z' },
    '/at',
    '"2026-02-30T09:30:00Z"',
    'a time with offset, such as 2026-03-03T09:30:00+01:00',
  ],
  ['no sump', { sump: undefined }, '/sump', 'nothing', 'text'],
  ['an unheard-of pump state', { pumps: 'on' }, '/pumps', '"on"', 'one of running, stopped'],
])('%s is refused by name', (_, fields, pointer, found, expected) => {
  expect(faultsOfEntry(fields)).toEqual([{ pointer, found, expected }])
})

test('the edges of a range are inside it', () => {
  expect(faultsOfEntry({ brix: 95, ph: 14, volume: 0 })).toEqual([])
})

test('NaN and infinity are no numbers', () => {
  expect(faultsOfEntry({ brix: Number.NaN })).toHaveLength(1)
  expect(faultsOfEntry({ volume: Number.POSITIVE_INFINITY })).toHaveLength(1)
})

test('unknown fields are let through', () => {
  expect(faultsOfEntry({ colour: 'milky' })).toEqual([])
})

test('a pointer escapes what RFC 6901 escapes', () => {
  expect(pointerOf(['columns', 'pH/Brix ~', 0])).toBe('/columns/pH~1Brix ~0/0')
})
