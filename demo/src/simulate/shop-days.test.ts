import { expect, test } from 'vitest'
import { dayHourOf, instantText, lastDay, shopDays, timeOn } from './shop-days.ts'

const days = shopDays('2026-03-31T08:00:00Z', 'Europe/Berlin', 3)

test('the days end with that of the instant asked for, by the shop’s clock', () => {
  expect(days.dates).toEqual(['2026-03-28', '2026-03-29', '2026-03-30', '2026-03-31'])
  expect(days.weekdays).toEqual([6, 7, 1, 2])
  expect(lastDay(days)).toBe(3)
  expect(shopDays('2026-03-31T22:30:00Z', 'Europe/Berlin', 0).dates).toEqual(['2026-04-01'])
})

test('the day on which the clocks go forward has 23 hours', () => {
  expect((days.midnights[2]! - days.midnights[1]!) / 3_600_000).toBe(23)
})

test('a time of day carries the offset of its day', () => {
  expect(instantText(days, timeOn(days, 0, '05:35'))).toBe('2026-03-28T05:35:00+01:00')
  expect(instantText(days, timeOn(days, 2, '05:35'))).toBe('2026-03-30T05:35:00+02:00')
})

test('an instant falls on the day whose midnight it has passed', () => {
  const midnight = days.midnights[2]!
  expect(dayHourOf(days, midnight - 1)).toMatchObject({ day: 1 })
  expect(dayHourOf(days, midnight)).toEqual({ day: 2, hours: 0 })
  expect(dayHourOf(days, midnight + 5_400_000)).toEqual({ day: 2, hours: 1.5 })
})

test.each(['yesterday', '2026-03-31', '2026-03-31T08:00:00'])('"%s" is no instant and refused', (until) => {
  expect(() => shopDays(until, 'Europe/Berlin', 3)).toThrow(/until must be a time with offset/)
})
