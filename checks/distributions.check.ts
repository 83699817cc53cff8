/**
 * Student's and the normal distribution, and monotone fits.
 *
 * Student: the t-factors of NIST Technical Note 1297, table B.1 (95 % and 99 %, two-sided; from memory, tolerance half of the last digit printed).
 * To fifteen digits: computed with the package @stdlib/stats-base-dists-t-quantile 0.2.3, an independent library; tolerance 1e-10 of the value. In
 * closed form, computed here: with 1 degree of freedom t = tan(π(p − ½)), with 2 t = (2p − 1)/√(2p(1 − p)), with 4 after Shaw (J. Comput. Finance 9,
 * 2006).
 *
 * Normal: Abramowitz and Stegun, tables 26.1 and 26.6, from memory, reproduced with SciPy 1.17.1; tolerance the digits given. The quantiles 1.645,
 * 1.960 and 2.576 are those of NIST Technical Note 1297, 6.2 (read in a copy).
 *
 * Monotone fits: test values of scikit-learn, sklearn/tests/test_isotonic.py (read); the examples of R's `isoreg`, whose fits were computed with
 * SciPy 1.17.1 `isotonic_regression`. Tolerance 1e-12.
 */
import { expect, test } from 'vitest'
import {
  median,
  monotoneFit,
  normalAbove,
  normalQuantile,
  studentBelow,
  studentQuantile,
} from '../packages/fluid/src/index.ts'

test.each([
  [1, 12.71, 63.66],
  [2, 4.3, 9.92],
  [3, 3.18, 5.84],
  [4, 2.78, 4.6],
  [5, 2.57, 4.03],
  [6, 2.45, 3.71],
  [8, 2.31, 3.36],
  [10, 2.23, 3.17],
  [15, 2.13, 2.95],
  [20, 2.09, 2.85],
  [30, 2.04, 2.75],
  [50, 2.01, 2.68],
])(
  'with %d degrees of freedom 95 percent lie within %d and 99 within %d standard uncertainties',
  (degreesOfFreedom, t95, t99) => {
    expect(studentQuantile({ probability: 0.975, degreesOfFreedom })).toBeCloseTo(t95, 2)
    expect(studentQuantile({ probability: 0.995, degreesOfFreedom })).toBeCloseTo(t99, 2)
  },
)

test.each([
  [0.95, 1, 6.313751514675037],
  [0.95, 2, 2.9199855803537242],
  [0.95, 3, 2.3533634348018224],
  [0.975, 4, 2.776445105197794],
  [0.995, 4, 4.604094871349992],
  [0.95, 7, 1.894578605090007],
  [0.975, 10, 2.2281388519862744],
  [0.995, 32, 2.7384814820121877],
  [0.95, 34, 1.6909242551868542],
  [0.9995, 5, 6.868826625881274],
  [0.975, 100, 1.9839715185235518],
  [0.95, 499, 1.6479129840597124],
])('below t a share of %d lies, with %d degrees of freedom, at %d', (probability, degreesOfFreedom, t) => {
  expect(Math.abs(studentQuantile({ probability, degreesOfFreedom }) / t - 1)).toBeLessThan(1e-10)
  expect(studentBelow({ t, degreesOfFreedom })).toBeCloseTo(probability, 12)
})

test.each([0.6, 0.75, 0.9, 0.95, 0.99, 0.999])('closed forms of t at %d', (p) => {
  const at = (degreesOfFreedom: number) => studentQuantile({ probability: p, degreesOfFreedom })
  expect(at(1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 10)
  expect(at(2) / ((2 * p - 1) / Math.sqrt(2 * p * (1 - p)))).toBeCloseTo(1, 10)
  const a = 4 * p * (1 - p)
  const q = Math.cos(Math.acos(Math.sqrt(a)) / 3) / Math.sqrt(a)
  expect(at(4) / (2 * Math.sqrt(q - 1))).toBeCloseTo(1, 10)
})

test.each([
  [1, 0.158655254],
  [1.96, 0.0249978951],
  [3, 0.001349898032],
  [5, 2.866515719e-7],
])('above %d standard deviations %d of the normal distribution lies', (z, share) => {
  expect(Math.abs(normalAbove(z) / share - 1)).toBeLessThan(2e-9)
  expect(normalAbove(-z)).toBeCloseTo(1 - share, 9)
})

test.each([
  [0.9, 1.28155157],
  [0.95, 1.64485363],
  [0.975, 1.95996398],
  [0.99, 2.32634787],
  [0.995, 2.5758293],
])('below z a share of %d lies at %d', (probability, z) => {
  expect(normalQuantile(probability)).toBeCloseTo(z, 7)
  expect(normalQuantile(1 - probability)).toBeCloseTo(-z, 7)
})

const weighted = (values: number[], weights: number[] = values.map(() => 1)) =>
  values.map((value, index) => ({ value, weight: weights[index]! }))

test.each<[number[], number[]]>([
  [
    [3, 7, 5, 9, 8, 7, 10],
    [3, 6, 6, 8, 8, 8, 10],
  ],
  [
    [1, 0, 4, 3, 3, 5, 4, 2, 0],
    [0.5, 0.5, 3, 3, 3, 3, 3, 3, 3],
  ],
  [
    [1, 0, 4, 3, 3, 5, 4, 2, 3],
    [0.5, 0.5, 10 / 3, 10 / 3, 10 / 3, 3.5, 3.5, 3.5, 3.5],
  ],
  [
    [5, 9, 1, 2, 5, 6, 7, 8, 3, 8],
    [4.25, 4.25, 4.25, 4.25, 5, 6, 6, 6, 6, 8],
  ],
])('the sequence that never falls nearest to %j is %j', (values, fitted) => {
  for (const [index, value] of monotoneFit(weighted(values)).entries()) expect(value).toBeCloseTo(fitted[index]!, 12)
})

test('with weights 1 to 7 the nearest to 1, 41, 51, 1, 2, 5, 24 is 1, five times 13.95, 24', () => {
  const fitted = monotoneFit(weighted([1, 41, 51, 1, 2, 5, 24], [1, 2, 3, 4, 5, 6, 7]))
  expect(fitted).toEqual([1, ...Array(5).fill(expect.closeTo(13.95, 12)), 24])
})

test('the median of the GUM’s twenty temperatures lies between the tenth and the eleventh', () => {
  // JCGM 100:2008, table 1, read in a copy; in order they are 100.07 and 100.33
  const temperatures = [96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68]
  const rest = [100.95, 101.11, 101.2, 101.57, 101.84, 102.36, 102.72]
  expect(median([...rest, ...temperatures])).toBeCloseTo((100.07 + 100.33) / 2, 12)
})
