import { expect, test } from 'vitest'
import { binomialBand, coverageOf } from './coverage.ts'

// Central 95 % quantiles of Binomial(n, c), computed with scipy.stats.binom.ppf.
test.each([
  [20, 0.9, 15, 20],
  [50, 0.9, 41, 49],
  [100, 0.9, 84, 95],
  [200, 0.9, 171, 188],
  [365, 0.9, 317, 339],
  [20, 0.95, 17, 20],
  [50, 0.95, 44, 50],
  [100, 0.95, 90, 99],
  [200, 0.95, 184, 196],
  [365, 0.95, 338, 354],
])('of %i intervals of level %f, honest ones hold %i to %i', (count, share, low, high) => {
  expect(binomialBand(count, share)).toEqual({ low, high })
})

test('three tosses of a coin can all fall either way', () => {
  // Each end has probability 1/8, more than 2.5 %.
  expect(binomialBand(3, 0.5)).toEqual({ low: 0, high: 3 })
})

test('an interval holds its own ends and nothing beyond', () => {
  const interval = { low90: 1, high90: 2 }
  const came = [0.99, 1, 1.5, 2, 2.01, Number.NaN]
  expect(coverageOf(came.map((value) => ({ interval, came: value })))).toMatchObject({ hits: 3, count: 6, share: 0.5 })
})
