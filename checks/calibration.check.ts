/**
 * Straight calibration lines, what lies behind a reading, product factors, agreement of methods.
 *
 * Lines: NIST/ITL Statistical Reference Datasets, Norris (read from the file in data/), NoInt1 and NoInt2 (read in copies), certified to 15 digits;
 * tolerance 1e-10 of the value. JCGM 100:2008 (GUM) H.3, data read, results from memory and recomputed; tolerance half of the last digit printed.
 * Pontius: certified results read; the data, from memory, reproduce all of them to 9 digits.
 *
 * Inverse prediction: F. A. Graybill, H. K. Iyer, Regression Analysis (1994), pages 431, 433, 119/434 and the arsenic data, as stored in the tests
 * and vignette of the R package investr (read); tolerance half of the last digit printed there; the longer figures were computed from the formula
 * with NumPy, tolerance 1e-9. D. L. Massart et al., Handbook of Chemometrics and Qualimetrics A (1997), chapter 8, and DIN 32645 (1994), as stored
 * in the R package chemCal (read). Convention: those two give a symmetric interval from the line's own scatter and n − 2 degrees of freedom; it is
 * rebuilt here from the line's coefficients. Fieller's exact limits for Massart's data: computed with SciPy.
 *
 * Factor: NoInt2 again, whose slope is exactly 8/11; the ends follow from t = 2.919986 (2 degrees of freedom). Bend: Pontius, whose square term is
 * certified at 65 of its standard deviations.
 *
 * Agreement: J. M. Bland, D. G. Altman, Lancet 327 (1986) 307–310: data read in copies; printed mean −2.1, sd 38.8, limits with z rounded to 2 −79.7
 * and 75.5, 95 % interval of the mean −22.0 to 17.8, standard error of a limit 16.3 (−114.3 to −45.1 for the lower), from memory. Tolerance: half of
 * the last digit printed, and what rounding the printed sd does.
 */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import {
  type CalibrationPoint,
  curvatureOf,
  differencesOf,
  fitLine,
  inversePrediction,
  productFactor,
  studentQuantile,
} from '../packages/fluid/src/index.ts'

const pairs = (xs: readonly number[], ys: readonly number[]): CalibrationPoint[] => xs.map((x, i) => ({ x, y: ys[i]! }))
const expectDigits = (found: number, certified: number, relative = 1e-10) =>
  expect(Math.abs(found / certified - 1)).toBeLessThan(relative)

const norris = readFileSync(new URL('data/norris.dat', import.meta.url), 'utf8')
  .split('\n')
  .slice(60)
  .map((line) => line.trim().split(/\s+/).map(Number))
  .filter((numbers) => numbers.length === 2)
  .map(([y, x]) => ({ x: x!, y: y! }))

test('Norris: the line of an ozone monitor’s calibration is the certified one', () => {
  expect(norris).toHaveLength(36)
  const line = fitLine(norris)
  expectDigits(line.intercept, -0.262323073774029)
  expectDigits(line.interceptSd!, 0.232818234301152)
  expectDigits(line.slope, 1.00211681802045)
  expectDigits(line.slopeSd!, 0.429796848199937e-3)
  expectDigits(line.residualSd!, 0.884796396144373)
  expectDigits(line.residualSquares, 26.6173985294224)
  expect(line.degreesOfFreedom).toBe(34)
})

test('NoInt1: a line through zero is the certified one', () => {
  const xs = Array.from({ length: 11 }, (_, i) => 60 + i)
  const line = fitLine(
    pairs(
      xs,
      xs.map((x) => x + 70),
    ),
    { throughZero: true },
  )
  expectDigits(line.slope, 2.07438016528926)
  expectDigits(line.slopeSd!, 0.165289256198347e-1)
  expectDigits(line.residualSd!, 3.56753034006338)
  expectDigits(line.residualSquares, 127.272727272727)
  expect(line).toMatchObject({ degreesOfFreedom: 10, intercept: 0 })
})

test('NoInt2: a line through zero of three points is the certified one', () => {
  const line = fitLine(pairs([4, 5, 6], [3, 4, 4]), { throughZero: true })
  expectDigits(line.slope, 0.727272727272727)
  expectDigits(line.slopeSd!, 0.420827318078432e-1)
  expectDigits(line.residualSd!, 0.369274472937998)
})

test('GUM H.3: the correction of a thermometer is y1 −0.1712 and y2 0.00218 a kelvin, −0.1494 at 30 °C', () => {
  const ts = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
  const bs = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
  const line = fitLine(
    pairs(
      ts.map((t) => t - 20),
      bs,
    ),
  )
  expect(line.intercept).toBeCloseTo(-0.1712, 4)
  expect(line.interceptSd).toBeCloseTo(0.0029, 4)
  expect(line.slope).toBeCloseTo(0.00218, 5)
  expect(line.slopeSd).toBeCloseTo(0.00067, 5)
  expect(line.residualSd).toBeCloseTo(0.0035, 4)
  expect(line.intercept + 10 * line.slope).toBeCloseTo(-0.1494, 4)
  // Correlation of the two: −x̄ / √(spread/n + x̄²)
  const r = -line.centre / Math.sqrt(line.spread / line.n + line.centre ** 2)
  expect(r).toBeCloseTo(-0.93, 3)
})

interface InverseCase {
  name: string
  xs: number[]
  ys: number[]
  y0: number | number[]
  level: number
  as?: 'reading' | 'mean'
  x: number
  low: number
  high: number
  /** After the point, as printed. */
  digits: number
  /** Of x, where it is printed to others. */
  xDigits?: number
}

const thermostat = {
  xs: [96, 98, 100, 102, 104, 106, 108, 110],
  ys: [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21],
}
const chamber = {
  xs: [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100],
  ys: [206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.7, 444.4, 469.14, 501.16],
}
const crystal = {
  xs: Array.from({ length: 14 }, (_, i) => 2 + 2 * i),
  ys: [0.08, 1.12, 4.43, 4.98, 4.92, 7.18, 5.57, 8.4, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04],
}
const arsenic = {
  xs: Array.from({ length: 32 }, (_, i) => Math.floor(i / 4)),
  ys: [
    0.17, 0.25, 0.01, 0.12, 1.25, 0.86, 1.25, 1.1, 2.01, 2.03, 2.14, 1.74, 3.18, 2.99, 3.23, 3.37, 3.91, 3.9, 3.61,
    4.27, 4.88, 5.33, 4.96, 4.98, 6.09, 6.17, 6.07, 5.97, 6.67, 7.02, 7.14, 7.3,
  ],
}
const massart = { xs: [0, 10, 20, 30, 40, 50], ys: [4, 21.2, 44.6, 61.8, 78, 105.2] }

const inverseCases: InverseCase[] = [
  {
    name: 'thermostat at 104',
    ...thermostat,
    y0: 104,
    level: 0.95,
    x: 103.995,
    low: 103.4,
    high: 104.6,
    digits: 1,
    xDigits: 3,
  },
  {
    name: 'thermostat at 100',
    ...thermostat,
    y0: 100,
    level: 0.9,
    x: 100.1,
    low: 99.63,
    high: 100.59,
    digits: 2,
    xDigits: 1,
  },
  {
    name: 'thermostat at 104, all digits',
    ...thermostat,
    y0: 104,
    level: 0.95,
    x: 103.994915645944,
    low: 103.404051142412,
    high: 104.589459384664,
    digits: 9,
  },
  {
    name: 'thermostat at 100, all digits',
    ...thermostat,
    y0: 100,
    level: 0.9,
    x: 100.112318003236,
    low: 99.6294028953122,
    high: 100.588503132254,
    digits: 9,
  },
  {
    name: 'dial of the chamber',
    ...chamber,
    y0: 400,
    level: 0.99,
    as: 'mean',
    x: 66.5,
    low: 65.07,
    high: 68.03,
    digits: 2,
    xDigits: 1,
  },
  {
    name: 'dial of the chamber, all digits',
    ...chamber,
    y0: 400,
    level: 0.99,
    as: 'mean',
    x: 66.5200432069131,
    low: 65.0708935302771,
    high: 68.0258324997184,
    digits: 9,
  },
  {
    name: 'crystals of 8',
    ...crystal,
    y0: 8,
    level: 0.95,
    as: 'mean',
    x: 15.8882,
    low: 14.659,
    high: 17.1596,
    digits: 4,
  },
  { name: 'crystals of 5', ...crystal, y0: 5, level: 0.9, as: 'mean', x: 9.93, low: 8.65, high: 11.05, digits: 2 },
  { name: 'arsenic read as 3', ...arsenic, y0: 3, level: 0.9, x: 2.9314, low: 2.6035, high: 3.2587, digits: 4 },
  { name: 'arsenic of 3', ...arsenic, y0: 3, level: 0.9, as: 'mean', x: 2.9314, low: 2.8724, high: 2.9898, digits: 4 },
  {
    name: 'arsenic read three times, scatter pooled',
    ...arsenic,
    y0: [3.17, 3.09, 3.16],
    level: 0.9,
    x: 3.07319130985,
    low: 2.88430025127,
    high: 3.26158788491,
    digits: 9,
  },
  {
    name: 'Massart at 15, exact limits',
    ...massart,
    y0: 15,
    level: 0.95,
    x: 6.09381,
    low: 0.96687248,
    high: 10.83743587,
    digits: 5,
  },
  {
    name: 'Massart at 90, exact limits',
    ...massart,
    y0: 90,
    level: 0.95,
    x: 43.93983,
    low: 39.19522541,
    high: 49.0684301,
    digits: 5,
  },
]

test.each(inverseCases)('$name: x is $x, between $low and $high', (printed) => {
  const { xs, ys, y0, level, as, x, low, high, digits, xDigits = digits } = printed
  const found = inversePrediction({ calibration: pairs(xs, ys), y0, level, as })
  if (found.outcome !== 'x') throw new Error(found.outcome)
  expect(found.x).toBeCloseTo(x, xDigits)
  expect(found.low).toBeCloseTo(low, digits)
  expect(found.high).toBeCloseTo(high, digits)
})

test.each([
  ['thermostat', thermostat, -3.13952380952382, 1.0302380952381, 0.234446325125987],
  ['chamber', chamber, 198.456363636364, 3.02981818181818, 4.04500589953497],
  ['Massart', massart, 2.923809523809524, 1.9817142857142858, 2.9911615835737844],
])('the line of the %s', (_, { xs, ys }, intercept, slope, sd) => {
  const line = fitLine(pairs(xs, ys))
  expectDigits(line.intercept, intercept, 1e-11)
  expectDigits(line.slope, slope, 1e-11)
  expectDigits(line.residualSd!, sd, 1e-11)
})

/** x and the symmetric half-width that the handbooks print. */
function symmetric(points: CalibrationPoint[], y0: number, { m, level }: { m: number; level: number }) {
  const line = fitLine(points)
  const x = (y0 - line.intercept) / line.slope
  const t = studentQuantile({ probability: (1 + level) / 2, degreesOfFreedom: line.degreesOfFreedom })
  const share = 1 / m + 1 / line.n + (x - line.centre) ** 2 / line.spread
  return { x, half: ((t * line.residualSd!) / line.slope) * Math.sqrt(share) }
}

test.each([
  [15, 1, 6.1, 4.9, 4.906751],
  [90, 1, 43.9, 4.9, 4.908053],
  [90, 5, 43.9, 3.2, 3.168489],
])('Massart: a reading of %d, %d times, is printed as %d ± %d', (y0, m, x, half, long) => {
  const found = symmetric(pairs(massart.xs, massart.ys), y0, { m, level: 0.95 })
  expect(found.x).toBeCloseTo(x, 1)
  expect(found.half).toBeCloseTo(half, 1)
  expect(found.half).toBeCloseTo(long, 5)
})

test('DIN 32645: the line, and 3500 at 99 percent is 0.1055 ± 0.07434', () => {
  const xs = Array.from({ length: 10 }, (_, i) => 0.05 * (i + 1))
  const points = pairs(xs, [3060, 3522, 3707, 4280, 5058, 5510, 5703, 6205, 7156, 7178])
  const line = fitLine(points)
  expect(line.intercept).toBeCloseTo(2480.866667, 5)
  expect(line.slope).toBeCloseTo(9661.939394, 5)
  expect(line.residualSd).toBeCloseTo(192.293924, 5)
  const { x, half } = symmetric(points, 3500, { m: 1, level: 0.99 })
  expect(x).toBeCloseTo(0.105479168496, 10)
  expect(half).toBeCloseTo(0.07434, 5)
})

test('a factor is the reciprocal of the certified slope of NoInt2, and so are the ends of its interval', () => {
  const found = productFactor([4, 5, 6].map((percent, i) => ({ percent, brix: [3, 4, 4][i]! })))
  if (found.outcome !== 'factor') throw new Error(found.outcome)
  expect(found.factor).toBeCloseTo(11 / 8, 12)
  expect(found.low90).toBeCloseTo(1 / (8 / 11 + 2.9199855803537242 * 0.0420827318078432), 9)
  expect(found.high90).toBeCloseTo(1 / (8 / 11 - 2.9199855803537242 * 0.0420827318078432), 9)
  expect(found.residualSd).toBeCloseTo(0.369274472937998, 12)
})

test('Pontius: a load cell that bends is not taken for a straight line, though R² is 0.99999', () => {
  const up = [
    0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599,
    1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844,
  ]
  const down = [
    0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.983, 1.0915, 1.20004, 1.30818, 1.41613,
    1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
  ]
  const loads = Array.from({ length: 40 }, (_, i) => 0.15 * ((i % 20) + 1))
  const points = pairs(loads, [...up, ...down])
  const found = curvatureOf(points)!
  expect(found.bent).toBe(true)
  // Certified square term −0.0031608187 a (million units)²; of 20 even steps of 0.15, x² less its own line is 0.15² × 19 × 18 / 6 = 1.2825 at the ends.
  const { slope } = fitLine(points)
  expect(found.farthest).toBeCloseTo((0.00316081871345029 * 1.2825) / slope, 9)
  // Squares that the term takes away: from the straight line's to the certified 1.55761768796992e-6.
  expect(fitLine(points).residualSquares).toBeGreaterThan(100 * 1.55761768796992e-6)
})

test('the peak-flow meters of the Lancet differ by −2.1 on the mean, within −79.7 and 75.5', () => {
  const wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
  const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
  const found = differencesOf(
    wright.map((value, i) => value - mini[i]!),
    0.95,
  )
  expect(found.n).toBe(17)
  expect(found.meanDifference).toBeCloseTo(-2.1, 1)
  expect(found.sd).toBeCloseTo(38.8, 1)
  expect(found.meanLow).toBeCloseTo(-22.0, 1)
  expect(found.meanHigh).toBeCloseTo(17.8, 1)
  // Printed with 2 sd for 1.96; twice the printed sd is off by up to 0.1 and the mean by 0.05.
  expect(Math.abs(found.meanDifference - 2 * found.sd + 79.7)).toBeLessThan(0.15)
  expect(Math.abs(found.meanDifference + 2 * found.sd - 75.5)).toBeLessThan(0.15)
  expect(Math.abs(found.upper - found.lower - 2 * 1.96 * found.sd)).toBeLessThan(0.01)
  // 2.12 × √(3 × 38.8² / 17): −79.7 + 34.6 = −45.1
  expect(found.limitReach).toBeCloseTo(114.3 - 79.7, 0)
})
