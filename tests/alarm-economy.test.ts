/** The example shop's year: never more than six new things a person and shift. `bench/today-year.ts` asks on every day. */
import { expect, test } from 'vitest'
import { countShifts, exampleBook } from '../bench/today-year.ts'

test('on no shift of the example shop’s record does the list show more than six new things', {
  timeout: 300_000,
}, async () => {
  const { book, first, last, close } = await exampleBook('2026-11-28T10:00:00+01:00')
  // Two days of every thirty-seven, so that every day of the week comes: at the shift's start, in the morning, in the evening.
  const shifts = await countShifts(book, { first, last, takes: (day) => day % 37 < 2, hours: [5.2, 9, 18] })
  await close()
  expect(last - first).toBeGreaterThan(365 * 24 * 3_600_000)
  expect(shifts.length).toBeGreaterThan(15)
  expect(shifts.filter(({ fresh }) => fresh > 6)).toEqual([])
  // It is no list of nothing: shifts with news are the rule.
  expect(shifts.filter(({ fresh }) => fresh > 0).length).toBeGreaterThan(shifts.length / 2)
})
