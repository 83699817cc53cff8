import type { Sd } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** One pair of a calibration: x is known, y was read. */
export interface CalibrationPoint {
  x: number
  y: number
}

export interface LineOptions {
  /** Whether the line is held to y = 0 at x = 0; default false. */
  throughZero?: boolean | undefined
  /** What the points are called where they are refused; default `points`. */
  name?: string | undefined
}

/** A straight line through points, y = intercept + slope · x, and how far it can be trusted. */
export interface StraightLine {
  slope: number
  /** 0 for a line held to zero. */
  intercept: number
  /** Null where there are no more points than coefficients: nothing is left to judge by. */
  slopeSd: Sd | null
  /** Null as above; 0 for a line held to zero. */
  interceptSd: Sd | null
  /** Standard deviation of the points about the line, in units of y; null as above. */
  residualSd: Sd | null
  /** Points less coefficients. */
  degreesOfFreedom: number
  n: number
  /** Centre about which `spread` counts: the mean of x; 0 for a line held to zero. */
  centre: number
  /** Σ (x − centre)². */
  spread: number
  /** Σ (y − line)². */
  residualSquares: number
}

/**
 * The straight line of least squares. The error is taken to lie in y alone, and to be equally large at every x.
 *
 *     slope = Σ (x − x̄) y / Σ (x − x̄)²         intercept = ȳ − slope · x̄
 *     slope = Σ x y / Σ x²                       held to zero
 *     residualSd² = Σ (y − line)² / degreesOfFreedom
 *     slopeSd² = residualSd² / spread            interceptSd² = residualSd² (1/n + x̄² / spread)
 *
 * Source: N. R. Draper, H. Smith, Applied Regression Analysis, chapter 1.
 *
 * @throws {RangeError} a point that is no number, or too few different values of x for a line
 * @example fitLine([{ x: 0, y: 1 }, { x: 1, y: 3 }, { x: 2, y: 5 }]) // slope 2, intercept 1
 */
export function fitLine(
  points: readonly CalibrationPoint[],
  { throughZero = false, name = 'points' }: LineOptions = {},
): StraightLine {
  for (const [index, { x, y }] of points.entries()) {
    requireRange(`${name}.${index}.x`, x, { min: -1e12, max: 1e12 })
    requireRange(`${name}.${index}.y`, y, { min: -1e12, max: 1e12 })
  }
  const n = points.length
  const centre = throughZero ? 0 : mean(points.map(({ x }) => x))
  const middle = throughZero ? 0 : mean(points.map(({ y }) => y))
  const spread = sum(points.map(({ x }) => (x - centre) ** 2))
  requireSpread(spread, points, { throughZero, name })
  const slope = sum(points.map(({ x, y }) => (x - centre) * (y - middle))) / spread
  const intercept = throughZero ? 0 : middle - slope * centre
  const residualSquares = sum(points.map(({ x, y }) => (y - middle - slope * (x - centre)) ** 2))
  const degreesOfFreedom = n - (throughZero ? 1 : 2)
  const residualSd = degreesOfFreedom === 0 ? null : Math.sqrt(residualSquares / degreesOfFreedom)
  return {
    slope,
    intercept,
    slopeSd: residualSd === null ? null : residualSd / Math.sqrt(spread),
    interceptSd: throughZero ? 0 : residualSd === null ? null : residualSd * Math.sqrt(1 / n + centre ** 2 / spread),
    residualSd,
    degreesOfFreedom,
    n,
    centre,
    spread,
    residualSquares,
  }
}

/** Values of x that differ by less than a millionth are taken as one. */
function requireSpread(
  spread: number,
  points: readonly CalibrationPoint[],
  { throughZero, name }: { throughZero: boolean; name: string },
): void {
  if (spread > 1e-12) return
  if (throughZero) throw new OutOfRange(name, points.length, 'at least 1 point off zero')
  throw new OutOfRange(name, Math.min(points.length, 1), 'points at 2 different values at least')
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
const mean = (values: readonly number[]) => (values.length === 0 ? 0 : sum(values) / values.length)
