import { expect, test } from 'vitest'
import { costGrowth } from './cost-growth.ts'

const kept = (...costs: number[]) => costs.map((costPerDay, n) => ({ age: 14 + 28 * n, costPerDay }))

test('three periods say nothing of a trend', () => {
  expect(costGrowth(kept(1, 2, 3))).toEqual({ outcome: 'too-few', periods: 3 })
})

test('a cost that rises evenly grows, by what it rises a day', () => {
  // 0.56 in 28 days, from 14 days × 0.02 under the first.
  const found = costGrowth(kept(2.28, 2.84, 3.4, 3.96))
  if (found.outcome === 'too-few') throw new Error('four are enough')
  expect(found.outcome).toBe('grows')
  expect(found.growth).toBeCloseTo(0.02, 10)
  expect(found.start).toBeCloseTo(2, 10)
})

test('one dear month is no growth', () => {
  const found = costGrowth(kept(2, 2.1, 6, 2, 2.2))
  expect(found).toMatchObject({ outcome: 'flat', periods: 5 })
  if (found.outcome === 'too-few') throw new Error('five are enough')
  expect(found.low90).toBeLessThan(0)
  expect(found.high90).toBeGreaterThan(0)
})

test('a cost that falls is flat, and never begins under nothing', () => {
  expect(costGrowth(kept(4, 3, 2, 1)).outcome).toBe('flat')
  expect(costGrowth(kept(0, 1, 3, 6))).toMatchObject({ start: 0 })
})
