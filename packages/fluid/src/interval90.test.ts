import { expect, test } from 'vitest'
import { interval90, quantile95 } from './interval90.ts'

test('the quantile is the one of the normal tables', () => {
  // 1.645 in every table of the normal distribution; the digits follow in NIST/SEMATECH e-Handbook 1.3.6.7.1 (1.64485)
  expect(quantile95).toBeCloseTo(1.64485, 5)
})

test('a 90 percent interval leaves out the same on both sides', () => {
  const { low90, high90 } = interval90(8, 0.5, 0)
  expect(8 - low90).toBeCloseTo(high90 - 8, 12)
  expect(high90).toBeCloseTo(8.8224, 4)
})

test('an interval ends at the floor of what is possible', () => {
  expect(interval90(0.1, 1, 0).low90).toBe(0)
})

test('without doubt an interval is a point', () => {
  expect(interval90(8, 0, 0)).toEqual({ low90: 8, high90: 8 })
})
