import { expect, test } from 'vitest'
import { strengthDays } from './strength-days.ts'

const read = (at: number, concentration: number) => ({ at, concentration })

test('a day between two readings lies on the line between them', () => {
  expect(strengthDays([read(0.5, 6), read(4.5, 8)], { from: 0, days: 5 })).toEqual([6, 6.5, 7, 7.5, 8])
})

test('before the first reading nothing is known, after the last one what was read, for as long as it reaches', () => {
  expect(strengthDays([read(2.5, 7)], { from: 0, days: 6, reach: 2 })).toEqual([null, null, 7, 7, 7, null])
})

test('readings too far apart are not joined', () => {
  expect(strengthDays([read(0.5, 6), read(10.5, 9)], { from: 0, days: 11, reach: 3 })).toEqual([
    6,
    6,
    6,
    6,
    null,
    null,
    null,
    null,
    null,
    null,
    9,
  ])
})

test('a reading in the afternoon counts from the next noon on', () => {
  expect(strengthDays([read(0.75, 6)], { from: 0, days: 2 })).toEqual([null, 6])
})

test('of two readings in one day the later one counts for its noon, whatever came before', () => {
  expect(strengthDays([read(0.3, 14), read(0.4, 6)], { from: 0, days: 1 })).toEqual([6])
})

test('a span that is no number is refused', () => {
  expect(() => strengthDays([], { from: 0, days: Number.NaN })).toThrow('days is NaN')
  expect(strengthDays([], { from: 0, days: 0 })).toEqual([])
})
