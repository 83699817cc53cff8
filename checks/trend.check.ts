/**
 * Trends after Theil, Sen, Mann and Kendall.
 *
 * P. K. Sen, J. Am. Stat. Assoc. 63 (1968): data, slope 4.0, 93 % limits 3.71 and 4.38, intercept 4, as in the tests of SciPy (read). Those limits
 * are whole ranks, the fourth and the eighteenth of 21 slopes; between ranks, as here, they are a little narrower.
 *
 * US EPA, Unified Guidance (EPA 530/R-09-007, 2009), examples 17-6 (sulfate) and 17-7 (sodium): data and, for 17-6, all results read in the manual
 * and data of the R package EnvStats; for 17-7 the slope of 1.33 is from memory and the rest was computed with NumPy. US EPA QA/G-9S (2006), page
 * 109: ties, score 22, variance 155.33, z 1.685, read. Wisconsin NR rule, table A: score −5, read. Nile at Aswan 1871–1970 (file in data/): computed
 * with NumPy and SciPy, as the R package trend would. Tolerance half of the last digit given; 0.005 for the limits of the Nile, which SciPy takes at
 * whole ranks.
 */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { trendOf } from '../packages/fluid/src/index.ts'

const series = (times: readonly number[], values: readonly number[]) =>
  times.map((at, i) => ({ at, value: values[i]! }))
const inTurn = (values: readonly number[]) => values.map((value, at) => ({ at, value }))

test('Sen 1968: slope 4, intercept 4, limits within the published ranks', () => {
  const trend = trendOf(series([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]), { level: 0.93 })
  expect(trend.slope).toBeCloseTo(4, 12)
  expect(trend.intercept).toBeCloseTo(4, 12)
  // All seven rise: the score is 21, tau 1. Between rank 4, 3.7143, and rank 5, 3.75; between 17, 4.1818, and 18, 4.375.
  expect(trend).toMatchObject({ score: 21, tau: 1 })
  expect(trend.low).toBeGreaterThan(3.7142)
  expect(trend.low).toBeLessThan(3.75)
  expect(trend.high).toBeGreaterThan(4.1818)
  expect(trend.high).toBeLessThan(4.375)
})

test('EPA 17-6: sulfate rises 26.67 a year, 20.00 to 35.71 at 95 percent', () => {
  const times = [
    89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1, 95.6, 95.8,
    96.1, 96.3, 96.6, 96.8,
  ]
  const values = [
    480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830, 720, 590,
  ]
  const trend = trendOf(series(times, values), { level: 0.95 })
  expect(trend).toMatchObject({ score: 194, n: 23, direction: 'rising' })
  expect(trend.variance).toBeCloseTo(1428, 9)
  expect(trend.z).toBeCloseTo(5.107322, 6)
  expect(trend.pValue).toBeCloseTo(3.267574e-7, 13)
  expect(trend.tau).toBeCloseTo(0.7744897, 7)
  expect(trend.slope).toBeCloseTo(26.6666667, 7)
  expect(trend.intercept).toBeCloseTo(-1909.3333, 4)
  expect(trend.low).toBeCloseTo(20, 5)
  expect(trend.high).toBeCloseTo(35.71182, 5)
})

test('EPA 17-7: sodium rises 1.33 a year', () => {
  const times = [89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3]
  const trend = trendOf(series(times, [56, 53, 51, 55, 52, 60, 62, 59, 61, 63]), { level: 0.95 })
  expect(trend.slope).toBeCloseTo(1.33, 2)
  expect(trend).toMatchObject({ score: 25, variance: 125, direction: 'rising' })
  expect(trend.z).toBeCloseTo(2.146625, 6)
  expect(trend.pValue).toBeCloseTo(0.031823, 6)
  expect(trend.intercept).toBeCloseTo(-65.9667, 4)
})

test('EPA QA/G-9S: with four and two ties the score is 22, its variance 155.33, z 1.685', () => {
  const trend = trendOf(inTurn([10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]))
  expect(trend.score).toBe(22)
  expect(trend.variance).toBeCloseTo(155.33, 2)
  expect(trend.z).toBeCloseTo(1.685, 3)
})

test('Wisconsin table A: 100, 50, 85, 75, 50 have the score −5', () => {
  expect(trendOf(inTurn([100, 50, 85, 75, 50])).score).toBe(-5)
})

test('the Nile falls 2.6 a year, −3.63 to −1.43 at 95 percent', () => {
  const rows = readFileSync(new URL('data/nile.csv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
  const flows = rows.map((row) => row.split(',').map(Number)).map(([at, value]) => ({ at: at!, value: value! }))
  expect(flows).toHaveLength(100)
  const trend = trendOf(flows, { level: 0.95 })
  expect(trend.score).toBe(-1387)
  expect(trend.variance).toBeCloseTo(112_728.3333, 4)
  expect(trend.z).toBeCloseTo(-4.128067, 6)
  expect(trend.pValue).toBeCloseTo(3.6583e-5, 9)
  expect(trend.tau).toBeCloseTo(-0.2807413, 7)
  expect(trend.slope).toBeCloseTo(-2.6, 10)
  expect(trend.low).toBeCloseTo(-3.627907, 2)
  expect(trend.high).toBeCloseTo(-1.428571, 2)
})
