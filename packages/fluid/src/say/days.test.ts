import { expect, test } from 'vitest'
import { sayDayAhead, sayOnDay } from './days.ts'

// 25 November 2026 is a Wednesday (ISO week 48 of 2026).
const berlin = { timeZone: 'Europe/Berlin', now: '2026-11-25T09:00:00Z' }

test.each([
  ['2026-11-25T20:00:00Z', 'today'],
  ['2026-11-26T06:00:00Z', 'tomorrow'],
  ['2026-11-27T06:00:00Z', 'Friday'],
  ['2026-12-01T06:00:00Z', 'Tuesday'],
  ['2026-12-02T06:00:00Z', 'Wed 2 Dec'],
  ['2027-01-04T06:00:00Z', 'Mon 4 Jan'],
])('%s is %s', (at, words) => {
  expect(sayDayAhead(at, berlin)).toBe(words)
})

test('days are those of the zone', () => {
  expect(sayDayAhead('2026-11-25T23:30:00Z', berlin)).toBe('tomorrow')
  expect(sayDayAhead('2026-11-25T23:30:00Z', { ...berlin, timeZone: 'UTC' })).toBe('today')
})

test('a day inside a sentence takes its preposition, but for today and tomorrow', () => {
  expect(sayOnDay('2026-11-27T06:00:00Z', berlin)).toBe('on Friday')
  expect(sayOnDay('2026-11-26T06:00:00Z', berlin)).toBe('tomorrow')
})
