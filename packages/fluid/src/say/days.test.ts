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

test('a quarter of an hour in which a day begins, or begins again, belongs to both days', () => {
  // Until 2011 St John's put its clock back from 00:01 to 23:01 of the day before: 7 November 2010, 02:31 UTC (IANA time zone database).
  const stJohns = { timeZone: 'America/St_Johns', now: '2010-11-06T12:00:00Z' }
  expect(sayDayAhead('2010-11-07T02:30:30Z', stJohns)).toBe('tomorrow')
  expect(sayDayAhead('2010-11-07T02:31:30Z', stJohns)).toBe('today')
})

test('the same day is said anew in another language, and from another day', () => {
  const at = '2026-12-09T06:00:00Z'
  expect(sayDayAhead(at, berlin)).toBe('Wed 9 Dec')
  expect(sayDayAhead(at, { ...berlin, locale: 'de' })).toBe('Mi. 9. Dez.')
  expect(sayDayAhead(at, { ...berlin, now: '2026-12-07T09:00:00Z' })).toBe('Wednesday')
  expect(sayDayAhead(at, { ...berlin, now: '2026-12-09T09:00:00Z' })).toBe('today')
})
