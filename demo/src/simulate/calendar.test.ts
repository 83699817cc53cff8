import { expect, test } from 'vitest'
import { calendarOf, easterSunday, isPublicHoliday } from './calendar.ts'
import { lastDay, shopDays } from './shop-days.ts'

test.each([
  // Published tables of Easter, from memory.
  [2000, '2000-04-23'],
  [2024, '2024-03-31'],
  [2025, '2025-04-20'],
  [2026, '2026-04-05'],
  [2038, '2038-04-25'],
])('Easter of %d falls on %s', (year, date) => expect(easterSunday(year)).toBe(date))

test('Good Friday, Ascension and Whit Monday are holidays, Easter Saturday is none', () => {
  expect(['2026-04-03', '2026-05-14', '2026-05-25', '2026-12-25'].every(isPublicHoliday)).toBe(true)
  expect(isPublicHoliday('2026-04-04')).toBe(false)
})

test('a shop works Mondays to Fridays outside its shutdowns', () => {
  const days = shopDays('2026-10-07T10:00:00Z', 'Europe/Berlin', 273)
  const { open, shutdowns } = calendarOf(days)
  // 1 August 2026 is a Saturday, the first Monday the 3rd.
  expect(shutdowns).toEqual([{ from: '2026-08-03', to: '2026-08-16' }])
  const isOpen = (date: string) => open[days.dates.indexOf(date)]
  expect(['2026-07-31', '2026-08-03', '2026-08-14', '2026-08-17', '2026-09-05'].map(isOpen)).toEqual([
    true,
    false,
    false,
    true,
    false,
  ])
})

test.each(['2026-12-27T03:00:00Z', '2026-08-09T12:00:00Z', '2026-03-01T12:00:00Z', '2027-01-10T12:00:00Z'])(
  'the two days up to %s are worked and the four weeks before it are no shutdown',
  (until) => {
    const days = shopDays(until, 'Europe/Berlin', 273)
    const { open, shutdowns } = calendarOf(days)
    const last = lastDay(days)
    expect([open[last], open[last - 1]]).toEqual([true, true])
    expect(shutdowns.length).toBeGreaterThan(0)
    for (const { to } of shutdowns) expect(to < days.dates[last - 27]!).toBe(true)
  },
)
