/** The example shop's months: never more than six new things a person and shift. `bench/today-year.ts` asks on every day. */
import { expect, test } from 'vitest'
import { countShifts, exampleBook } from '../bench/today-year.ts'

test('on no shift of the example shop’s record does the list show more than six new things', {
  timeout: 120_000,
}, async () => {
  const { book, first, last, close } = await exampleBook('2026-10-07T10:00:00+02:00')
  // Two days of every seventeen, so that every day of the week comes: at the shift's start, in the morning, after noon, in the evening.
  const shifts = await countShifts(book, { first, last, takes: (day) => day % 17 < 2, hours: [5.2, 9, 13, 18] })
  await close()
  expect(shifts.length).toBeGreaterThan(20)
  expect(shifts.filter(({ fresh }) => fresh > 6)).toEqual([])
  // It is no list of nothing: shifts with news are the rule.
  expect(shifts.filter(({ fresh }) => fresh > 0).length).toBeGreaterThan(shifts.length / 2)
})
