import { expect, test } from 'vitest'
import { clockOfFraction, readClock } from './clock.ts'

test.each([
  ['14:30', [14, 30, 0]],
  ['7:05:09', [7, 5, 9]],
  ['2:30 PM', [14, 30, 0]],
  ['2:30p.m.', [14, 30, 0]],
  ['12:00 AM', [0, 0, 0]],
  ['12:15 pm', [12, 15, 0]],
  ['7 am', [7, 0, 0]],
  ['14.30 Uhr', [14, 30, 0]],
  ['14h30', [14, 30, 0]],
] as const)('reads %s', (text, [hour, minute, second]) => {
  expect(readClock(text)).toEqual({ hour, minute, second })
})

test.each(['24:00', '12:60', '13:00 PM', '0:30 am', '14', 'noon', ''])('"%s" is no time of day', (text) => {
  expect(readClock(text)).toBeNull()
})

test('a workbook keeps half past two in the afternoon as 14.5/24 of a day', () => {
  expect(clockOfFraction(14.5 / 24)).toEqual({ hour: 14, minute: 30, second: 0 })
})
