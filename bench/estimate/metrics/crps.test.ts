import { expect, test } from 'vitest'
import { crpsOfNormal, erf } from './crps.ts'

test('the score at −3 of a standard normal is the one of R scoringrules', () => {
  // scoringrules, tests/testthat/test-crps_norm.R: 2.43657473.
  expect(crpsOfNormal({ mean: 0, sd: 1 }, -3)).toBeCloseTo(2.43657473, 8)
})

test('shifting and scaling forecast and figure scale the score', () => {
  // The same file: location 0.1 and scale 0.9 give 0.9 × 2.43657473 at 0.1 − 0.9 × 3.
  expect(crpsOfNormal({ mean: 0.1, sd: 0.9 }, 0.1 - 0.9 * 3)).toBeCloseTo(0.9 * 2.43657473, 8)
})

test('at its own mean a standard normal scores (√2 − 1) / √π', () => {
  // z = 0: 2φ(0) − 1/√π = √(2/π) − 1/√π = 0.233694977…
  expect(crpsOfNormal({ mean: 5, sd: 1 }, 5)).toBeCloseTo((Math.SQRT2 - 1) / Math.sqrt(Math.PI), 12)
})

test.each([
  // Computed with scipy's norm in the closed form; N(2, 2) at 0 is the example of the scoringrules vignette.
  [0, 1, 0.5, 0.331403531254856],
  [0, 1, 1, 0.602441357627616],
  [0, 1, 2, 1.452791821685903],
  [2, 2, 0, 1.204882715255],
  [10, 0.5, 10.3, 0.186577940467868],
])('N(%f, %f) at %f scores %f', (mean, sd, came, score) => {
  expect(crpsOfNormal({ mean, sd }, came)).toBeCloseTo(score, 11)
})

test('the score is the distance where the forecast is all but a point', () => {
  expect(crpsOfNormal({ mean: 1, sd: 1e-9 }, 4)).toBeCloseTo(3, 8)
})

test('a forecast without width is refused', () => {
  expect(() => crpsOfNormal({ mean: 1, sd: 0 }, 1)).toThrow('sd 0')
  expect(() => crpsOfNormal({ mean: 1, sd: Number.NaN }, 1)).toThrow('sd NaN')
})

test('the error function has the values of the tables', () => {
  // Abramowitz & Stegun, table 7.1.
  expect(erf(0.5)).toBeCloseTo(0.5204998778, 10)
  expect(erf(1)).toBeCloseTo(0.8427007929, 10)
  expect(erf(-2)).toBeCloseTo(-0.995322265, 9)
  // Both branches meet.
  expect(Math.abs(erf(2.5 - 1e-12) - erf(2.5 + 1e-12))).toBeLessThan(1e-11)
})
