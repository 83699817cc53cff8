import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { expect, test } from 'vitest'
import { dayOf, daysBetween } from './calendar.ts'

// Berlin went to summer time on 29 March 2026 at 01:00 UTC and goes back on 25 October 2026 at 01:00 UTC (EU Directive 2000/84/EC).
test.each([
  ['2026-01-01T22:59:59.999Z', '2026-01-01'],
  ['2026-01-01T23:00:00.000Z', '2026-01-02'],
  ['2026-07-01T21:59:59.999Z', '2026-07-01'],
  ['2026-07-01T22:00:00.000Z', '2026-07-02'],
  ['2026-07-01T23:30:00-05:00', '2026-07-02'],
])('%s is of %s in Berlin', (instant, day) => {
  expect(dayOf(instant, 'Europe/Berlin')).toBe(day)
})

test('days between instants are days of the calendar, not of 24 hours', () => {
  expect(daysBetween('2026-03-28T22:30:00Z', '2026-03-28T23:30:00Z', 'Europe/Berlin')).toBe(1)
  expect(daysBetween('2026-10-25T22:30:00Z', '2026-10-24T23:30:00Z', 'Europe/Berlin')).toBe(0)
  expect(daysBetween('2026-03-03T12:00:00Z', '2026-02-01T12:00:00Z', 'UTC')).toBe(-30)
})

test('a clock put back over midnight has the day before again', () => {
  // St John's, 7 November 2010: at 02:31 UTC the clock went from 00:01 to 23:01 of the day before (IANA time zone database).
  expect(dayOf('2010-11-07T02:30:59Z', 'America/St_Johns')).toBe('2010-11-07')
  expect(dayOf('2010-11-07T02:31:00Z', 'America/St_Johns')).toBe('2010-11-06')
  expect(dayOf('2010-11-07T03:30:00Z', 'America/St_Johns')).toBe('2010-11-07')
})

test('days are those of the calendar of another library, in any zone', () => {
  const zones = ['UTC', 'Europe/Berlin', 'America/New_York', 'Asia/Kathmandu', 'Australia/Lord_Howe', 'Pacific/Apia']
  const instants = fc.date({ min: new Date('1990-01-01'), max: new Date('2060-01-01'), noInvalidDate: true })
  fc.assert(
    fc.property(fc.constantFrom(...zones), instants, (zone, instant) => {
      const text = instant.toISOString()
      expect(dayOf(text, zone)).toBe(Temporal.Instant.from(text).toZonedDateTimeISO(zone).toPlainDate().toString())
    }),
  )
})

test('what is no instant has no day', () => {
  expect(() => dayOf('yesterday', 'UTC')).toThrow(/^instant is yesterday/)
})
