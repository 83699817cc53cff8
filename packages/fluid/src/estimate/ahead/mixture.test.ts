import fc from 'fast-check'
import { expect, test } from 'vitest'
import { quantile95 } from '../../interval90.ts'
import { normalAbove, normalQuantile } from '../../statistics/normal.ts'
import { above, figureOf, figureOfLogs, innerOf, quantile, tail } from './mixture.ts'

const standard = [{ probability: 1, mean: 0, sd: 1 }]
/** Two halves far apart. */
const two = [
  { probability: 0.5, mean: 0, sd: 1 },
  { probability: 0.5, mean: 100, sd: 1 },
]

test('the quick tail is the normal’s to 1.5e-7, on both sides', () => {
  for (let z = -8; z <= 8; z += 0.01) expect(Math.abs(tail(z) - normalAbove(z))).toBeLessThan(1.6e-7)
})

test('the quantiles of a single normal are the normal’s', () => {
  for (const share of [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99]) {
    // A share known to 1.5e-7 is a quantile to that over the density there, 0.027 at 1 %.
    expect(Math.abs(quantile(standard, share) - normalQuantile(share))).toBeLessThan(1e-5)
    expect(quantile([{ probability: 1, mean: 7, sd: 2 }], share)).toBeCloseTo(7 + 2 * normalQuantile(share), 4)
  }
})

test('above a value lies each part’s share of it', () => {
  expect(above(two, 50)).toBeCloseTo(0.5, 7)
  // All of the upper half and 0.1587 of the lower.
  expect(above(two, 1)).toBeCloseTo(0.5 + 0.5 * 0.158655, 6)
})

test('what is certain lies above or not', () => {
  const certain = [{ probability: 1, mean: 3, sd: 0 }]
  expect([above(certain, 2.9), above(certain, 3), above(certain, 3.1)]).toEqual([1, 0, 0])
  expect(quantile(certain, 0.05)).toBe(3)
})

test('a mixture’s interval holds its tails, not those of a normal as wide', () => {
  const { mean, sd, low90, high90 } = figureOf(two, -10)
  expect(mean).toBe(50)
  expect(sd).toBeCloseTo(Math.sqrt(1 + 50 ** 2), 9)
  // 5 % of all is a tenth of the lower half: −1.2816.
  expect(low90).toBeCloseTo(-1.281552, 4)
  expect(high90).toBeCloseTo(101.281552, 4)
})

test('a figure of one part is its normal, none of it beyond its ends', () => {
  expect(figureOf([{ probability: 1, mean: 10, sd: 2 }], 0)).toEqual({
    mean: 10,
    sd: 2,
    low90: 10 - 2 * quantile95,
    high90: 10 + 2 * quantile95,
  })
  const near = figureOf([{ probability: 1, mean: 1, sd: 2 }], 0, 3)
  expect([near.low90, near.high90]).toEqual([0, 3])
})

test('the inner half lies between the quarters', () => {
  const { low, high } = innerOf([{ probability: 1, mean: 10, sd: 2 }], 0)
  expect(low).toBeCloseTo(10 - 2 * 0.67449, 4)
  expect(high).toBeCloseTo(10 + 2 * 0.67449, 4)
  expect(innerOf([{ probability: 1, mean: 1, sd: 10 }], 0).low).toBe(0)
})

test('a figure of logarithms has the mean and sd of a lognormal, and the quantiles of its logarithm', () => {
  // μ 1, σ 0.5: mean e^(1 + 0.125) = 3.0802, sd mean · √(e^0.25 − 1) = 1.6416; quantiles e^(1 ± 0.8224).
  const { mean, sd, low90, high90 } = figureOfLogs([{ probability: 1, mean: 1, sd: 0.5 }])
  expect(mean).toBeCloseTo(3.0802, 4)
  expect(sd).toBeCloseTo(1.6416, 4)
  expect(low90).toBeCloseTo(Math.exp(1 - 0.5 * quantile95), 4)
  expect(high90).toBeCloseTo(Math.exp(1 + 0.5 * quantile95), 3)
})

test('under each quantile of any mixture lies its share', () => {
  const part = fc.record({
    probability: fc.double({ min: 0.05, max: 1, noNaN: true }),
    mean: fc.double({ min: -50, max: 50, noNaN: true }),
    sd: fc.double({ min: 0.1, max: 20, noNaN: true }),
  })
  fc.assert(
    fc.property(
      fc.array(part, { minLength: 1, maxLength: 6 }),
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      (parts, share) => {
        const sum = parts.reduce((total, { probability }) => total + probability, 0)
        const mixture = parts.map((one) => ({ ...one, probability: one.probability / sum }))
        expect(1 - above(mixture, quantile(mixture, share))).toBeCloseTo(share, 4)
      },
    ),
  )
})
