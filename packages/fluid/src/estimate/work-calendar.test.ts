import fc from 'fast-check'
import { expect, test } from 'vitest'
import { everyDay, mondayToFriday } from './testing.ts'
import { workBetween } from './work-calendar.ts'

// Day 0 was Thursday 1970-01-01: day 1 a Friday, 2 and 3 the weekend, 4 a Monday, 11 the next.

test.each([
  ['a whole week', 4, 11, 5],
  ['a Monday', 4, 5, 1],
  ['Friday to Monday', 1, 5, 2],
  ['a weekend', 2, 4, 0],
  ['half a Saturday', 2, 2.5, 0],
  ['noon to noon over a weekend', 1.5, 4.5, 1],
  ['a quarter of a Tuesday', 5.25, 5.5, 0.25],
  ['no time', 5, 5, 0],
  ['a year of 52 weeks', 4, 4 + 364, 260],
])('%s from day %d to %d is so many days of work: %d', (_, from, until, work) => {
  expect(workBetween(mondayToFriday, from, until)).toBeCloseTo(work, 12)
})

test('days before 1970 are days of the week like all others', () => {
  // Day −3 was Monday 29 December 1969, −1 a Wednesday.
  expect(workBetween(mondayToFriday, -3, 0)).toBe(3)
  expect(workBetween(mondayToFriday, -5, -3)).toBe(0)
  expect(workBetween(mondayToFriday, -10.5, -3)).toBeCloseTo(5, 12)
})

test('backwards there is no work', () => {
  expect(workBetween(mondayToFriday, 11, 4)).toBe(0)
})

test('a shutdown takes its days out, the first and the last of them included', () => {
  const calendar = { ...mondayToFriday, shutdowns: [{ from: 5, to: 7 }] }
  expect(workBetween(calendar, 4, 11)).toBe(2)
  expect(workBetween(calendar, 4, 6.5)).toBe(1)
  expect(workBetween(calendar, 5.5, 7.5)).toBe(0)
  expect(workBetween(calendar, 7.5, 8.5)).toBe(0.5)
  expect(workBetween(calendar, 8, 9)).toBe(1)
})

test('a shutdown over a weekend takes only the days that would have been worked', () => {
  const calendar = { ...mondayToFriday, shutdowns: [{ from: 1, to: 4 }] }
  expect(workBetween(calendar, 0, 6)).toBe(2)
})

test('a machine that stands does no work, wherever the time asked about begins and ends', () => {
  const idle = [{ from: 5, until: 7.5 }]
  expect(workBetween(mondayToFriday, 4, 11, idle)).toBeCloseTo(2.5, 12)
  expect(workBetween(mondayToFriday, 6, 7, idle)).toBe(0)
  expect(workBetween(mondayToFriday, 7, 8, idle)).toBeCloseTo(0.5, 12)
  expect(workBetween(mondayToFriday, 8, 9, idle)).toBe(1)
  // A Saturday of standing still costs nothing.
  expect(workBetween(mondayToFriday, 4, 11, [{ from: 9, until: 10 }])).toBe(5)
})

test('a shop without days of work never works', () => {
  expect(workBetween({ workDays: [], shutdowns: [] }, 0, 100)).toBe(0)
})

// Times are those of the shop's clock: a day of 23 or 25 hours is a day, so that nothing of it is left to see here.
test('every day counts one, whatever the clock did on it', () => {
  expect(workBetween(everyDay, 20_540, 20_547)).toBe(7)
})

test('work of two times that follow each other is work of both together', () => {
  const at = fc.double({ min: -60, max: 60, noNaN: true })
  const day = fc.integer({ min: -60, max: 60 })
  fc.assert(
    fc.property(
      fc.tuple(at, at, at),
      fc.subarray([1, 2, 3, 4, 5, 6, 7]),
      fc.tuple(day, fc.nat(9)),
      fc.tuple(at, fc.double({ min: 0, max: 9, noNaN: true })),
      (times, workDays, [from, days], [start, length]) => {
        const [a, b, c] = times.toSorted((x, y) => x - y) as [number, number, number]
        const calendar = { workDays, shutdowns: [{ from, to: from + days }] }
        const idles = [{ from: start, until: start + length }]
        const whole = workBetween(calendar, a, c, idles)
        expect(workBetween(calendar, a, b, idles) + workBetween(calendar, b, c, idles)).toBeCloseTo(whole, 9)
        expect(whole).toBeLessThanOrEqual(c - a + 1e-9)
      },
    ),
  )
})
