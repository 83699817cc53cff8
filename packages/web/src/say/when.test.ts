import { expect, test } from 'vitest'
import { calendarDaysBetween, dayIn, sayDayAndTime, sayWhen, sayWhenShort } from './when.ts'

// 25 November 2026 is a Wednesday (ISO week 48 of 2026).
const berlin = { timeZone: 'Europe/Berlin', now: '2026-11-25T09:00:00Z' }

test('a time is said from the calendar days of the shop', () => {
  expect(sayWhen('2026-11-25T06:42:00Z', berlin)).toBe('today 07:42')
  expect(sayWhen('2026-11-24T22:30:00Z', berlin)).toBe('yesterday 23:30')
  expect(sayWhen('2026-11-22T06:42:00Z', berlin)).toBe('Sun 07:42, 3 days ago')
  expect(sayWhen('2026-11-03T06:42:00Z', berlin)).toBe('Tue 3 Nov 07:42, 22 days ago')
})

test('half past eleven at night in UTC is already the next day in Berlin', () => {
  expect(dayIn('2026-11-24T23:30:00Z', 'Europe/Berlin')).toBe('2026-11-25')
  expect(sayWhen('2026-11-24T23:30:00Z', berlin)).toBe('today 00:30')
})

test('another year is named', () => {
  expect(sayWhen('2025-12-30T11:00:00Z', berlin)).toBe('Tue 30 Dec 2025 12:00, 330 days ago')
})

test('days are counted by the calendar across the change of the clocks', () => {
  // Clocks go forward in Berlin on 29 March 2026: that day has 23 hours.
  expect(calendarDaysBetween('2026-03-28T23:30:00Z', '2026-03-29T22:15:00Z', 'Europe/Berlin')).toBe(1)
})

test('a narrow line leaves the count away', () => {
  expect(sayWhenShort('2026-11-22T06:42:00Z', berlin)).toBe('Sun 07:42')
  expect(sayWhenShort('2026-11-03T06:42:00Z', berlin)).toBe('3 Nov 07:42')
})

test('on paper a time has its day, today as well', () => {
  expect(sayDayAndTime('2026-11-25T06:42:00Z', 'Europe/Berlin')).toBe('Wed 25 Nov 07:42')
})
