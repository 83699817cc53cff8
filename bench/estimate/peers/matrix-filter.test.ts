import { expect, test } from 'vitest'
import { type Belief, learn, spread, surpriseVariance } from './matrix-filter.ts'

test('the Nile as a local level comes to the published level and variance', () => {
  // Durbin & Koopman, "Time Series Analysis by State Space Methods", 2nd ed., §2.2: variances 15099 and 1469.1, start
  // a₁ = 0, P₁ = 10⁷. First step by hand: F = 10⁷ + 15099, K = 0.998492; a = 0.998492 × 1120 = 1118.311,
  // P = 10⁷ × 15099 / F + 1469.1 = 15076.24 + 1469.1 = 16545.34.
  const belief: Belief = { mean: [0], cov: [[1e7]] }
  learn(belief, { surprise: 1120, slope: [1], variance: 15099 })
  spread(belief, [[1]], [1469.1])
  expect(belief.mean[0]).toBeCloseTo(1118.311, 3)
  expect(belief.cov[0]![0]).toBeCloseTo(16545.34, 1)
  // Their steady state: P = 1469.1 × (1 + √(1 + 4 × 15099 / 1469.1)) / 2 = 5501.1 before each flood.
  for (let year = 0; year < 200; year++) {
    learn(belief, { surprise: 0, slope: [1], variance: 15099 })
    spread(belief, [[1]], [1469.1])
  }
  expect(belief.cov[0]![0]).toBeCloseTo((1469.1 * (1 + Math.sqrt(1 + (4 * 15099) / 1469.1))) / 2, 6)
})

test('what is seen of one state teaches the other by their covariance', () => {
  // P = [[4, 2], [2, 3]], seen: the first with variance 1. S = 5, K = [0.8, 0.4]; a surprise of 5 moves by 4 and 2;
  // P becomes [[4 − 16/5, 2 − 8/5], [2 − 8/5, 3 − 4/5]].
  const belief: Belief = {
    mean: [1, 1],
    cov: [
      [4, 2],
      [2, 3],
    ],
  }
  const seen = { surprise: 5, slope: [1, 0], variance: 1 }
  expect(surpriseVariance(belief, seen)).toBe(5)
  learn(belief, seen)
  expect(belief.mean).toEqual([5, 3])
  expect(belief.cov.flat().map((value) => Number(value.toFixed(12)))).toEqual([0.8, 0.4, 0.4, 2.2])
})

test('a spread goes along the slopes of the step', () => {
  // F = [[1, 1], [0, 1]], P = I: F Fᵀ = [[2, 1], [1, 1]], and noise 0.5 on the second.
  const belief: Belief = {
    mean: [0, 0],
    cov: [
      [1, 0],
      [0, 1],
    ],
  }
  spread(
    belief,
    [
      [1, 1],
      [0, 1],
    ],
    [0, 0.5],
  )
  expect(belief.cov).toEqual([
    [2, 1],
    [1, 1.5],
  ])
})
