import { expect, test } from 'vitest'
import { daysOf, monthsUpTo } from './months.ts'

test('months run back from this one, over the turn of the year', () => {
  expect(monthsUpTo('2026-02-28', 4)).toEqual(['2026-02', '2026-01', '2025-12', '2025-11'])
  expect(monthsUpTo('2026-10-31', 2)).toEqual(['2026-10', '2026-09'])
})

test('a month has its first and last day, a leap February its 29th', () => {
  expect(daysOf('2026-10')).toEqual({ from: '2026-10-01', to: '2026-10-31' })
  expect(daysOf('2028-02')).toEqual({ from: '2028-02-01', to: '2028-02-29' })
})
