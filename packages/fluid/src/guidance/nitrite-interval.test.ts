import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Reported } from '../estimate/events.ts'
import { nitriteInterval } from './nitrite-interval.ts'

const rule = { days: 7, calm: { below: 10, inARow: 3, longest: 28 } }
/** Results a week apart. */
const weekly = (...values: Reported[]) => values.map((value, week) => ({ day: 7 * week, value }))

test.each<[string, Reported[], number, number, string]>([
  ['nothing read yet', [], 7, 0, 'too-few'],
  ['two under the bound', [5, 9], 7, 2, 'too-few'],
  ['three under the bound', [5, 9, 9.9], 28, 3, 'calm'],
  ['three, the last on the bound', [5, 5, 10], 7, 0, 'over'],
  ['one over it after three', [5, 5, 5, 10.1], 7, 0, 'over'],
  ['one over it, then two under', [5, 5, 5, 12, 5, 5], 7, 2, 'too-few'],
  ['one over it, then three under', [12, 5, 5, 5], 28, 3, 'calm'],
])('%s', (_, values, days, run, because) => {
  expect(nitriteInterval(weekly(...values), rule)).toEqual({ days, run, because })
})

test('a class of a strip counts as under the bound only where all of it is', () => {
  const strip = (value: Reported) => nitriteInterval(weekly(5, 5, value), rule).because
  expect(strip({ below: 10 })).toBe('calm')
  expect(strip({ low: 5, high: 10 })).toBe('calm')
  expect(strip({ low: 5, high: 20 })).toBe('over')
  expect(strip({ atLeast: 5 })).toBe('over')
})

test('a gap longer than the longest interval begins the run anew, one as long does not', () => {
  const spaced = (gap: number) => [0, 7, 7 + gap].map((day) => ({ day, value: 5 }))
  expect(nitriteInterval(spaced(28), rule)).toMatchObject({ days: 28, run: 3 })
  expect(nitriteInterval(spaced(29), rule)).toMatchObject({ days: 7, run: 1 })
})

test.each([
  ['days is 0', { ...rule, days: 0 }],
  ['inARow is 0', { days: 7, calm: { ...rule.calm, inARow: 0 } }],
  ['longest is 5, expected at least 7', { days: 7, calm: { ...rule.calm, longest: 5 } }],
])('%s is refused', (message, wrong) => {
  expect(() => nitriteInterval([], wrong)).toThrow(message)
})

test('one more result over the bound never makes the interval longer, whatever came before', () => {
  const results = fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { maxLength: 12 })
  fc.assert(
    fc.property(results, fc.double({ min: 10, max: 100, noNaN: true }), (values, over) => {
      expect(nitriteInterval(weekly(...values, over), rule).days).toBe(7)
    }),
  )
})
