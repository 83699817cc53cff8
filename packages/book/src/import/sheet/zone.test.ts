import { expect, test } from 'vitest'
import { zoneClock } from './zone.ts'

const wall = (year: number, month: number, day: number, hour?: number, minute = 0) => ({
  year,
  month,
  day,
  clock: hour === undefined ? null : { hour, minute, second: 0 },
  shortYear: false,
})

test('a day alone is noon in the zone of the shop', () => {
  // Berlin is two hours before UTC in summer, one in winter.
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 7, 5))).toEqual({
    at: '2026-07-05T10:00:00.000Z',
    shift: null,
  })
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 12, 5))).toEqual({
    at: '2026-12-05T11:00:00.000Z',
    shift: null,
  })
})

test('noon of the days on which clocks change is noon all the same', () => {
  // In 2026 clocks in the EU change on 29 March and 25 October, at 01:00 UTC.
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 3, 29))).toEqual({
    at: '2026-03-29T10:00:00.000Z',
    shift: null,
  })
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 10, 25))).toEqual({
    at: '2026-10-25T11:00:00.000Z',
    shift: null,
  })
})

test('a time that came twice is the first of the two, and told', () => {
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 10, 25, 2, 30))).toEqual({
    at: '2026-10-25T00:30:00.000Z',
    shift: 'twice',
  })
})

test('a time that the clock skipped is told', () => {
  expect(zoneClock('Europe/Berlin').instantOf(wall(2026, 3, 29, 2, 30))).toEqual({
    at: '2026-03-29T01:30:00.000Z',
    shift: 'never',
  })
})
