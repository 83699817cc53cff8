import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayNumber, dayText, isDay, termEnd } from './day-number.ts'

test('a day and its number are one', () => {
  expect(dayNumber('1970-01-01')).toBe(0)
  expect(dayText(0)).toBe('1970-01-01')
  fc.assert(
    fc.property(fc.integer({ min: -719_528, max: 2_932_896 }), (day) => {
      expect(dayNumber(dayText(day))).toBe(day)
    }),
  )
})

test.each(['2026-02-30', '2026-13-01', '26-01-01', '', '2026-3-3', 'soon'])('"%s" is no day', (text) => {
  expect(isDay(text)).toBe(false)
  expect(() => dayNumber(text)).toThrow('expected one such as')
})

test('a number that is no day is refused', () => {
  expect(() => dayText(0.5)).toThrow('day is 0.5')
  expect(() => dayText(Number.NaN)).toThrow('day is NaN')
  expect(() => dayText(2_932_897)).toThrow('day is 2932897')
})

test.each([
  ['2026-01-30', 1, 'months', '2026-02-28'],
  ['2026-11-30', 3, 'months', '2027-02-28'],
  ['2026-12-15', 1, 'months', '2027-01-15'],
  ['2028-02-29', 1, 'years', '2029-02-28'],
  ['2028-02-29', 4, 'years', '2032-02-29'],
  ['2026-12-31', 1, 'days', '2027-01-01'],
] as const)('from %s on, %d %s end on %s', (from, count, unit, end) => {
  expect(dayText(termEnd(dayNumber(from), { count, unit }))).toBe(end)
})

test('a term is a whole number of days, months or years', () => {
  expect(() => termEnd(0, { count: 0, unit: 'days' })).toThrow('count is 0')
  expect(() => termEnd(0, { count: 1.5, unit: 'months' })).toThrow('count is 1.5')
  expect(() => termEnd(0.5, { count: 1, unit: 'months' })).toThrow('day is 0.5')
})
