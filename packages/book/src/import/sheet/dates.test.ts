import { expect, test } from 'vitest'
import { type DateText, exists, inOrder, readDateText } from './dates.ts'

const day = (text: string) => {
  const read = readDateText(text)
  if (read?.kind !== 'wall') return read
  const { year, month, day, clock } = read.wall
  return [year, month, day, ...(clock === null ? [] : [clock.hour, clock.minute])].join(' ')
}

test.each([
  ['2026-10-05', '2026 10 5'],
  ['2026-10-05 14:30', '2026 10 5 14 30'],
  ['2026-10-05T14:30:20', '2026 10 5 14 30'],
  ['2026/10/5', '2026 10 5'],
  ['20261005', '2026 10 5'],
  ['05.10.2026', '2026 10 5'],
  ['5. 10. 26', '2026 10 5'],
  ['Mo., 05.10.2026 7:10', '2026 10 5 7 10'],
  ['05.10.2026, 14.30 Uhr', '2026 10 5 14 30'],
  ['5 Oct 2026', '2026 10 5'],
  ['5-Oct-26', '2026 10 5'],
  ['5. Oktober 2026', '2026 10 5'],
  ['5 de octubre de 2026', '2026 10 5'],
  ['October 5th, 2026 2:30 PM', '2026 10 5 14 30'],
  ['Mar 1, 2026', '2026 3 1'],
  ['1. März 2026', '2026 3 1'],
])('%s has one reading only', (text, expected) => {
  expect(day(text)).toBe(expected)
})

test.each(['', 'Average', '3.4', '10/5', 'Oct 5', '2026', '5.10', '10/5/2026 noonish', '1/2/3/4', '10/5/12345'])(
  '"%s" is no date',
  (text) => {
    expect(readDateText(text)).toBeNull()
  },
)

test('two digits of a year are 2000 to 2069 and 1970 to 1999', () => {
  expect([day('01.02.69'), day('01.02.70')]).toEqual(['2069 2 1', '1970 2 1'])
})

test('a date with an offset is an instant already', () => {
  expect(readDateText('2026-10-05T14:30:00+02:00')).toEqual({ kind: 'instant', instant: '2026-10-05T14:30:00+02:00' })
})

const numbers = (text: string) => readDateText(text) as Extract<DateText, { kind: 'numbers' }>

test.each([
  ['03/04/2026', 'dmy', [2026, 4, 3]],
  ['03/04/2026', 'mdy', [2026, 3, 4]],
  ['26-04-03', 'ymd', [2026, 4, 3]],
] as const)('%s as %s', (text, order, [year, month, day]) => {
  expect(inOrder(numbers(text), order)).toMatchObject({ year, month, day })
})

test('a year of four digits at the end is no year/month/day', () => {
  expect(inOrder(numbers('03/04/2026'), 'ymd')).toBeNull()
})

test.each([
  ['29.02.2028', true],
  ['29.02.2026', false],
  ['31.04.2026', false],
  ['30.04.2026', true],
  ['00.04.2026', false],
  ['01.13.2026', false],
  ['31.12.1969', false],
  ['01.01.2100', false],
])('whether the calendar of a log has %s: %s', (text, expected) => {
  const read = readDateText(text)
  expect(read?.kind === 'wall' && exists(read.wall)).toBe(expected)
})
