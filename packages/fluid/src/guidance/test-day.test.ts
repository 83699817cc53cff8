import fc from 'fast-check'
import { expect, test } from 'vitest'
import { testDay } from './test-day.ts'

const weekdays = { workDays: [1, 2, 3, 4, 5], shutdowns: [] }
const dayOf = (text: string) => Date.parse(text) / 86_400_000
const due = (last: string | null, everyDays: number, calendar: Parameters<typeof testDay>[1] = weekdays) => {
  const day = testDay({ last: last === null ? null : dayOf(last), everyDays, today: dayOf('2026-03-05') }, calendar)
  return new Date(day * 86_400_000).toISOString().slice(0, 10)
}

// 2 March 2026 was a Monday.
test('a weekly test falls on the same day of the week', () => {
  expect(due('2026-03-02', 7)).toBe('2026-03-09')
})

test('on a day off it is due on the working day before, so that it is never later than asked', () => {
  expect(due('2026-03-03', 4)).toBe('2026-03-06')
  expect(due('2026-03-02', 6)).toBe('2026-03-06')
  expect(
    due('2026-03-02', 7, { ...weekdays, shutdowns: [{ from: dayOf('2026-03-07'), to: dayOf('2026-03-10') }] }),
  ).toBe('2026-03-06')
})

test('a daily test waits over the weekend, when nobody works', () => {
  expect(due('2026-03-04', 1)).toBe('2026-03-05')
  expect(due('2026-03-06', 1)).toBe('2026-03-09')
})

test('what was never done is due today', () => {
  expect(due(null, 7)).toBe('2026-03-05')
})

test('a shop that never works keeps the day itself', () => {
  expect(due('2026-03-02', 7, { workDays: [], shutdowns: [] })).toBe('2026-03-09')
})

test('an interval under a day is refused', () => {
  expect(() => testDay({ last: 0, everyDays: 0, today: 0 }, weekdays)).toThrow('everyDays is 0')
  expect(() => testDay({ last: Number.NaN, everyDays: 1, today: 0 }, weekdays)).toThrow('last is NaN')
})

test('where a working day lies in between, the interval is never longer than asked', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: 7, max: 60 }), (last, everyDays) => {
      const day = testDay({ last, everyDays, today: last }, weekdays)
      expect(day).toBeGreaterThan(last)
      expect(day).toBeLessThanOrEqual(last + everyDays)
    }),
  )
})
