import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dueDay, firstWorkDay } from './due-day.ts'
import { punctuality } from './punctuality.ts'

// Day 4 is Monday 5 January 1970.
const week = { workDays: [1, 2, 3, 4, 5], shutdowns: [] }
const always = { workDays: [1, 2, 3, 4, 5, 6, 7], shutdowns: [] }

test('a task that was never done is due on the first working day from when it is asked for', () => {
  expect(dueDay({ lastOn: null, everyDays: 30, from: 4 }, week)).toBe(4)
  expect(dueDay({ lastOn: null, everyDays: 30, from: 9 }, week)).toBe(11)
})

test('a day off moves it to the working day before, never on or before the day it was done', () => {
  expect(dueDay({ lastOn: 4, everyDays: 5, from: 0 }, week)).toBe(8)
  expect(dueDay({ lastOn: 8, everyDays: 1, from: 0 }, week)).toBe(11)
})

test('an interval never grows where a working day lies in it', () => {
  fc.assert(
    fc.property(fc.nat(20_000), fc.integer({ min: 1, max: 400 }), (lastOn, everyDays) => {
      const due = dueDay({ lastOn, everyDays, from: 0 }, week)
      expect(due).toBeGreaterThan(lastOn)
      if (everyDays >= 3) expect(due - lastOn).toBeLessThanOrEqual(everyDays)
    }),
  )
})

test('a calendar without a working day, and an interval that is none, are refused', () => {
  const of = { lastOn: 4, everyDays: 7, from: 0 }
  expect(() => dueDay(of, { workDays: [], shutdowns: [] })).toThrow('at least one working day')
  expect(() => dueDay({ ...of, everyDays: 0 }, week)).toThrow('everyDays is 0')
  expect(() => dueDay({ ...of, everyDays: 1.5 }, week)).toThrow('a whole number')
})

test('a shutdown is passed over', () => {
  expect(firstWorkDay(4, { ...week, shutdowns: [{ from: 4, to: 10 }] })).toBe(11)
})

test('what is done on its days is late never, and does not slip', () => {
  expect(punctuality([0, 7, 14, 21, 28, 35], 7, always)).toEqual({
    times: 5,
    late: 0,
    medianDaysLate: 0,
    slipping: false,
  })
})

test('done once, nothing can be said', () => {
  expect(punctuality([3, 3], 7, always)).toEqual({ times: 0, late: 0, medianDaysLate: null, slipping: null })
})

test('days count in their order in time, whatever order they come in', () => {
  expect(punctuality([9, 0], 7, always)).toEqual({ times: 1, late: 1, medianDaysLate: 2, slipping: null })
})
