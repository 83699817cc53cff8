import { Temporal } from 'temporal-polyfill'
import { expect, test } from 'vitest'
import { dayMs, dayNumber, dayText, shopClock } from './shop-clock.ts'

const ms = (text: string) => Date.parse(text)
/** 2026-03-03 is day 20 515: 56 years of 365 days, 14 leap days before 2026, 31 + 28 + 2 days. */
const march3 = 56 * 365 + 14 + 61

test('days count from 1970-01-01 in the shop’s zone, with the fraction its clock shows', () => {
  const berlin = shopClock('Europe/Berlin')
  expect(berlin.at(ms('2026-03-03T05:00:00Z'))).toBe(march3 + 0.25)
  expect(berlin.at(ms('2026-03-02T23:00:00Z'))).toBe(march3)
  expect(shopClock('America/Chicago').at(ms('2026-03-03T05:59:59.999Z'))).toBeLessThan(march3)
  expect(dayText(march3)).toBe('2026-03-03')
  expect(dayNumber('2026-03-03')).toBe(march3)
})

test('a day of 23 hours has its gap, and after it the clock shows what it shows', () => {
  const clock = shopClock('Europe/Berlin')
  const day = dayNumber('2026-03-29')
  expect(clock.at(ms('2026-03-29T00:59:59.999Z'))).toBeCloseTo(day + 2 / 24, 7)
  expect(clock.at(ms('2026-03-29T01:00:00Z'))).toBe(day + 3 / 24)
  expect(clock.at(ms('2026-03-29T10:00:00Z'))).toBe(day + 0.5)
})

test('in the hour that comes twice the clock waits and never runs back', () => {
  const clock = shopClock('Europe/Berlin')
  const day = dayNumber('2026-10-25')
  expect(clock.at(ms('2026-10-25T00:30:00Z'))).toBe(day + 2.5 / 24)
  expect(clock.at(ms('2026-10-25T01:00:00Z'))).toBe(day + 3 / 24)
  expect(clock.at(ms('2026-10-25T01:30:00Z'))).toBe(day + 3 / 24)
  expect(clock.at(ms('2026-10-25T02:30:00Z'))).toBe(day + 3.5 / 24)
})

test('a zone that was set back a minute after midnight does not begin a day twice', () => {
  // Newfoundland, until 2011: 00:01 became 23:01 of the day before.
  const clock = shopClock('America/St_Johns')
  const day = dayNumber('2005-10-30')
  expect(clock.at(ms('2005-10-30T02:30:30Z'))).toBeGreaterThan(day)
  expect(clock.at(ms('2005-10-30T02:40:00Z'))).toBeGreaterThanOrEqual(day)
})

test.each(['Europe/Berlin', 'America/Chicago', 'Asia/Kolkata', 'Pacific/Apia', 'UTC', 'Australia/Lord_Howe'])(
  'in %s every hour of thirty years agrees with the calendar, but for the hours set back',
  (zone) => {
    const clock = shopClock(zone)
    let back = 0
    let before = Number.NEGATIVE_INFINITY
    for (let hour = ms('2000-01-01T00:20:00Z'); hour < ms('2030-01-01T00:00:00Z'); hour += 97 * 60_000 * 60) {
      const wall = Temporal.Instant.fromEpochMilliseconds(hour).toZonedDateTimeISO(zone).toPlainDateTime()
      const shown = ms(`${wall.toString({ smallestUnit: 'millisecond' })}Z`) / dayMs
      const at = clock.at(hour)
      if (at !== shown) back += 1
      expect(at).toBeGreaterThanOrEqual(before)
      before = at
      if (at === shown) expect(Math.abs(clock.instantOf(at) - hour) % 1_800_000).toBe(0)
    }
    expect(back).toBeLessThan(3)
  },
)

test('an instant comes back from the time the clock shows', () => {
  const clock = shopClock('Europe/Berlin')
  for (const text of ['2026-03-03T09:30:00.123Z', '2026-07-01T00:00:00.000Z', '2026-03-29T01:00:00.000Z']) {
    expect(new Date(clock.instantOf(clock.at(ms(text)))).toISOString()).toBe(text)
  }
})

test('years far off have a day like any other', () => {
  const clock = shopClock('Europe/Berlin')
  expect(Math.floor(clock.at(ms('9999-06-01T00:00:00Z')))).toBe(dayNumber('9999-06-01'))
  expect(Math.floor(clock.at(ms('0001-06-01T12:00:00Z')))).toBe(dayNumber('0001-06-01'))
})
