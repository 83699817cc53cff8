import { expect, test } from 'vitest'
import { monthTicks } from './month-ticks.ts'

test('months are named as often as there is room', () => {
  const [from, to] = [Date.parse('2026-01-15T00:00:00Z'), Date.parse('2026-11-15T00:00:00Z')]
  expect(monthTicks(from, to, 12).map((tick) => new Date(tick).getUTCMonth() + 1)).toEqual([
    2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
  ])
  expect(monthTicks(from, to, 4).map((tick) => new Date(tick).getUTCMonth() + 1)).toEqual([4, 7, 10])
})
