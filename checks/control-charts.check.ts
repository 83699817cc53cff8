/**
 * Control charts.
 *
 * NIST/SEMATECH e-Handbook of Statistical Methods, read in copies: 6.3.2.2 (single values, flow rate of 10 batches), 6.3.2.3 (CUSUM) and 6.3.2.4
 * (EWMA). Tolerance half of the last digit printed; CUSUM 0.0051, since its table prints halves either way; EWMA limits 1e-3, since it rounds
 * √(0.3/1.7) to 0.4201.
 *
 * D. C. Montgomery, Introduction to Statistical Quality Control, table 9.1 with examples 9.1 (CUSUM) and 9.2 (EWMA): data and sums read in copies,
 * tolerance 0.005; averages and limits were computed from the formula with NumPy, tolerance half of the last digit. The book's text is remembered as
 * "signals at observation 28" for the EWMA; its arithmetic gives 29.
 *
 * Run lengths: J. M. Lucas, R. B. Crosier, Technometrics 24 (1982), table 1 (read in the manual of the R package spc); J. M. Lucas, M. S. Saccucci
 * 1990 (from memory, recomputed from the integral equation). Simulated here with a generator of fixed seed; tolerance four standard errors of the
 * simulation.
 *
 * L. S. Nelson, J. Quality Technology 16 (1984) 237–239: wording read in SAS/QC and other manuals; the two short series are test vectors of the
 * package d3-nelson-rules (read), where a point exactly 1 sd away counts as within, as it does here.
 */
import { expect, test } from 'vitest'
import { cusumChart, ewmaChart, individualsChart, nelsonSignals } from '../packages/fluid/src/index.ts'

const expectEach = (found: readonly number[], printed: readonly number[], tolerance: number) => {
  expect(found).toHaveLength(printed.length)
  for (const [index, value] of printed.entries()) {
    expect(Math.abs(found[index]! - value), `value ${index + 1}: ${found[index]}`).toBeLessThanOrEqual(tolerance)
  }
}

test('the flow rates of ten batches run between 45.8159 and 55.8041 about 50.81', () => {
  const chart = individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
  expect(chart.centre).toBeCloseTo(50.81, 10)
  expect(chart.sd * 1.128).toBeCloseTo(1.8778, 4)
  expect(chart.upper).toBeCloseTo(55.8041, 4)
  expect(chart.lower).toBeCloseTo(45.8159, 4)
  expect(chart.signals).toEqual([])
  // All eight of Nelson's tests are silent as well.
  expect(nelsonSignals(chart.points, chart)).toEqual([])
})

const ewmaValues = [
  52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1,
]

test('the averages of the handbook’s EWMA stay between 47.4115 and 52.5884', () => {
  const chart = ewmaChart(ewmaValues, { lambda: 0.3, target: 50, sd: 2.0539 })
  const printed = [
    50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92,
    50.73, 51.23, 51.94, 51.99,
  ]
  expectEach(chart.points, printed, 0.0051)
  expect(Math.abs(chart.upper.at(-1)! - 52.5884)).toBeLessThan(1e-3)
  expect(Math.abs(chart.lower.at(-1)! - 47.4115)).toBeLessThan(1e-3)
  expect(chart.signals).toEqual([])
})

test('the handbook’s CUSUM signals at group 14 and at each after it', () => {
  const values = [
    324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325,
    327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
  ]
  const chart = cusumChart(values, { target: 325, k: 0.3175, h: 4.1959 })
  const above = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16, 19.04]
  const below = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0]
  expectEach(
    chart.points.map((point) => point.above),
    above,
    0.0051,
  )
  expectEach(
    chart.points.map((point) => point.below),
    below,
    0.0051,
  )
  expect(chart.signals.map(({ index }) => index + 1)).toEqual([14, 15, 16, 17, 18, 19, 20])
  // The same in standard deviations of the group means, 1.27 / √4.
  const inSds = cusumChart(values, { target: 325, sd: 0.635, k: 0.5, h: 4.1959 / 0.635 })
  expect(inSds.signals).toEqual(chart.signals)
})

const montgomery = [
  9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08, 9.37, 10.62, 10.31,
  8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52,
]

test('example 9.1: the CUSUM signals at 29, and the shift began after 22', () => {
  const chart = cusumChart(montgomery, { target: 10, sd: 1, k: 0.5, h: 5 })
  const above = [
    0, 0, 0, 1.16, 2.82, 2.5, 0.04, 1, 0, 0, 0, 0.97, 0.98, 0, 0, 0, 0.12, 0, 0, 0.34, 0.74, 0, 1.79, 2.79, 2.89, 3.47,
    3.35, 4.47, 5.28, 5.3,
  ]
  const below = [0.05, 1.56, 1.77, 0, 0, 0, 1.46, 0, 0.3, 0, 0.47, 0, 0, 0.1, 0, 0.13, 0, 0, 0.98, 0, 0, 0.17, 0]
  expectEach(
    chart.points.map((point) => point.above),
    above,
    0.005,
  )
  expectEach(
    chart.points.slice(0, 23).map((point) => point.below),
    below,
    0.005,
  )
  expect(chart.signals.map(({ index }) => index + 1)).toEqual([29, 30])
  // N+ = 7 at 29: the sum was last 0 at 22.
  expect(chart.points.slice(0, 29).findLastIndex((point) => point.above === 0) + 1).toBe(22)
})

test('example 9.2: the EWMA passes its limits at 29 and 30', () => {
  const chart = ewmaChart(montgomery, { target: 10, sd: 1, lambda: 0.1, width: 2.7 })
  const averages = [
    9.945, 9.7495, 9.70355, 9.8992, 10.12528, 10.13075, 9.92167, 10.07551, 9.98796, 10.02316, 9.92384, 10.07846,
    10.12161, 10.04945, 10.05251, 9.98426, 10.04783, 10.07405, 9.91864, 10.01078, 10.0997, 10.02273, 10.24946, 10.37451,
    10.39706, 10.46535, 10.45682, 10.57314, 10.64682, 10.63414,
  ]
  expectEach(chart.points, averages, 0.000006)
  for (const [at, low, high, digits] of [
    [1, 9.73, 10.27, 2],
    [2, 9.6368, 10.3632, 4],
    [5, 9.5001, 10.4999, 4],
    [29, 9.3813, 10.6187, 4],
  ] as const) {
    expect(chart.lower[at - 1]).toBeCloseTo(low, digits)
    expect(chart.upper[at - 1]).toBeCloseTo(high, digits)
  }
  expect(chart.signals.map(({ index }) => index + 1)).toEqual([29, 30])
})

test('the same series as single values: 10.315, between 6.7154 and 13.9146', () => {
  const chart = individualsChart(montgomery)
  expect(chart.centre).toBeCloseTo(10.315, 10)
  expect(chart.sd * 1.128).toBeCloseTo(1.3534483, 7)
  expect(chart.upper).toBeCloseTo(13.914596, 6)
  expect(chart.lower).toBeCloseTo(6.715404, 6)
})

/** Standard normal numbers from a generator of fixed seed (mulberry32, Box and Muller). */
function normals(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** Mean run length to the first signal and its standard error, over many runs of values shifted by `shift` sd. */
function runLength(
  shift: number,
  { runs, length, seed, first }: { runs: number; length: number; seed: number; first: (values: number[]) => number },
) {
  const next = normals(seed)
  const lengths = Array.from({ length: runs }, () => {
    const values = Array.from({ length }, () => shift + next())
    const index = first(values)
    if (index < 0) throw new Error(`no signal within ${length}`)
    return index + 1
  })
  const mean = lengths.reduce((sum, run) => sum + run / runs, 0)
  const variance = lengths.reduce((sum, run) => sum + (run - mean) ** 2, 0) / (runs - 1)
  return { mean, error: Math.sqrt(variance / runs) }
}

test.each([
  [0, 168, 400],
  [0.25, 74.2, 800],
  [0.5, 26.6, 2000],
  [0.75, 13.3, 3000],
  [1, 8.38, 4000],
  [1.5, 4.75, 4000],
  [2, 3.34, 4000],
  [2.5, 2.62, 4000],
  [3, 2.19, 4000],
  [4, 1.71, 4000],
])('a CUSUM of k 0.5 and h 4 finds a shift of %d sd after %d values on the mean', (shift, published, runs) => {
  const first = (values: number[]) => cusumChart(values, { target: 0, sd: 1, k: 0.5, h: 4 }).signals[0]?.index ?? -1
  const { mean, error } = runLength(shift, { runs, length: shift < 0.5 ? 3000 : 600, seed: 7, first })
  expect(Math.abs(mean - published)).toBeLessThan(4 * error + 0.005)
})

test.each([
  [0.5, 31.3, 1500],
  [1, 10.33, 3000],
  [2, 4.36, 3000],
  [3, 2.87, 3000],
])(
  'an EWMA of lambda 0.1 with limits of 2.814 held steady finds a shift of %d sd after %d values',
  (shift, published, runs) => {
    const limit = 2.814 * Math.sqrt(0.1 / 1.9)
    const first = (values: number[]) =>
      ewmaChart(values, { target: 0, sd: 1, lambda: 0.1 }).points.findIndex((point) => Math.abs(point) > limit)
    const { mean, error } = runLength(shift, { runs, length: 600, seed: 11, first })
    expect(Math.abs(mean - published)).toBeLessThan(4 * error + 0.005)
  },
)

test('a chart of single values with limits of 3 sd gives a false signal once in 370 values', () => {
  const first = (values: number[]) => individualsChart(values, { target: 0, sd: 1 }).signals[0]?.index ?? -1
  const { mean, error } = runLength(0, { runs: 300, length: 6000, seed: 3, first })
  expect(Math.abs(mean - 370.4)).toBeLessThan(4 * error)
})

/**
 * Chance that a value of an undisturbed series completes or carries on a pattern, by hand: 1 beyond 3 sd 0.0027; 2 two sides of ½⁹; 3 two of 6!
 * orders; 4 two of 14! orders times the 199,360,981 that go up and down; 5 and 6 from p beyond 2 sd, 0.02275, and beyond 1 sd, 0.158655, with one of
 * the two and three of the four before it; 7 0.682689¹⁵; 8 0.317311⁸.
 */
const falseSignals: [rule: number, chance: number][] = [
  [1, 0.0027],
  [2, 2 / 2 ** 9],
  [3, 2 / 720],
  [4, (2 * 199_360_981) / 87_178_291_200],
  [5, 2 * 0.02275 * (1 - 0.97725 ** 2)],
  [6, 2 * 0.158655 * (4 * 0.158655 ** 3 * 0.841345 + 0.158655 ** 4)],
  [7, 0.682689 ** 15],
  [8, 0.317311 ** 8],
]

test('each of Nelson’s tests gives less than 5 false signals in 1000 values, and as many as its odds say', () => {
  const next = normals(5)
  const values = Array.from({ length: 200_000 }, next)
  const signals = nelsonSignals(values, { centre: 0, sd: 1 })
  for (const [rule, chance] of falseSignals) {
    expect(chance).toBeLessThan(0.005)
    const share = signals.filter((signal) => signal.rule === rule).length / values.length
    // Signals come in runs of up to seven or so: four standard errors of that.
    expect(Math.abs(share - chance), `test ${rule}: ${share}`).toBeLessThan(4 * Math.sqrt((7 * chance) / values.length))
  }
})

test('eight values beyond 1 sd on either side signal by test 8, one among them within does not', () => {
  const eighth = (values: number[]) => nelsonSignals(values, { centre: 0, sd: 1, rules: [8] }).map(({ index }) => index)
  expect(eighth([2, 4, 2, -4, 6, -10, 7, 2])).toEqual([7])
  expect(eighth([2, 0, 2, -4, 6, 0, 7, 2])).toEqual([])
})

test('fifteen values of 0 and 1 by turns, sd 1, signal by test 7', () => {
  const values = Array.from({ length: 15 }, (_, index) => index % 2)
  expect(nelsonSignals(values, { centre: 0, sd: 1, rules: [7] })).toEqual([{ index: 14, rule: 7 }])
})
