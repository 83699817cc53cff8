import type { Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { studentQuantile } from '../statistics/student.ts'
import { type CalibrationPoint, fitLine, type StraightLine } from './line.ts'

/** A calibration, and what was read afterwards on something unknown. */
export interface InverseQuestion {
  /** At least two different values of x. */
  calibration: readonly CalibrationPoint[]
  /** The reading, or repeats of it on the same sample. */
  y0: number | readonly number[]
  /** Of the interval, 0.5 to 0.999; default 0.9. */
  level?: number | undefined
  /** `reading` (default): y0 was read and bears the scatter of readings. `mean`: y0 is what is wanted on the average, as when a dial is set for a target. */
  as?: 'reading' | 'mean' | undefined
}

/** The x behind a reading, or why there is none. */
export type InverseAnswer =
  | {
      outcome: 'x'
      x: number
      low: number
      high: number
      slope: number
      intercept: number
      /** Of the calibration alone; null where it has only two points. */
      residualSd: Sd | null
      /** Of calibration and repeats together: what the interval is made with. */
      pooledSd: Sd
      degreesOfFreedom: number
      /** False where x lies outside the calibration's own range: the line is carried on, which nothing there supports. */
      within: boolean
    }
  /** The slope could be 0 at this level: the x that fit are no interval. */
  | { outcome: 'slope-not-significant'; slope: number; slopeSd: Sd; level: number }
  /** Two points and one reading: nothing tells how far the readings scatter. */
  | { outcome: 'no-scatter'; x: number; slope: number; intercept: number }

/**
 * The x behind a reading on a straight calibration line, with the exact limits: all x that the reading does not
 * contradict at `level`.
 *
 *     x = (ȳ0 − intercept) / slope                         ȳ0 the mean of m repeats
 *     g = t² s² / (slope² · spread)
 *     limits = x + ((x − x̄) g ± (t s / slope) √((x − x̄)²/spread + (1 − g)(1/m + 1/n))) / (1 − g)
 *
 * They are not symmetric about x. With `as: 'mean'` 1/m is left out. With g ≥ 1 the slope is not significant and no interval exists.
 *
 * Convention for repeats: their scatter counts, s² = (Σ (y − line)² + Σ (y0 − ȳ0)²) / (n + m − 3), with n + m − 3 degrees of
 * freedom. Some books keep the line's own s with n − 2 instead; with one reading both are the same.
 *
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175–185; N. R. Draper, H. Smith, Applied Regression Analysis, section on inverse regression;
 * F. A. Graybill, H. K. Iyer, Regression Analysis (1994), chapter 6.
 *
 * @throws {RangeError} a quantity that is no number, too few different values of x, no reading
 * @example inversePrediction({ calibration: [{ x: 0, y: 0.1 }, { x: 5, y: 3.2 }, { x: 10, y: 6.1 }], y0: 5 }).x // 8.14…
 */
export function inversePrediction({ calibration, y0, level = 0.9, as = 'reading' }: InverseQuestion): InverseAnswer {
  const readings = typeof y0 === 'number' ? [y0] : y0
  requireRange('level', level, { min: 0.5, max: 0.999 })
  requireRange('y0', readings.length, { min: 1 })
  for (const [index, y] of readings.entries()) requireRange(typeof y0 === 'number' ? 'y0' : `y0.${index}`, y, {})

  const line = fitLine(calibration, { name: 'calibration' })
  const { slope, intercept, residualSd, spread } = line
  const mean = readings.reduce((sum, y) => sum + y / readings.length, 0)
  const x = (mean - intercept) / slope
  const degreesOfFreedom = line.degreesOfFreedom + readings.length - 1
  if (degreesOfFreedom === 0) {
    return slope === 0
      ? { outcome: 'slope-not-significant', slope, slopeSd: 0, level }
      : { outcome: 'no-scatter', x, slope, intercept }
  }
  const repeatSquares = readings.reduce((sum, y) => sum + (y - mean) ** 2, 0)
  const pooledSd = Math.sqrt((line.residualSquares + repeatSquares) / degreesOfFreedom)
  const reach = studentQuantile({ probability: (1 + level) / 2, degreesOfFreedom }) * pooledSd
  const g = reach ** 2 / (slope ** 2 * spread)
  if (slope === 0 || g >= 1) {
    return { outcome: 'slope-not-significant', slope, slopeSd: pooledSd / Math.sqrt(spread), level }
  }
  const ends = fiellerEnds(line, { x, g, reach, repeats: as === 'mean' ? null : readings.length })
  const xs = calibration.map((point) => point.x)
  return {
    outcome: 'x',
    x,
    low: Math.min(...ends),
    high: Math.max(...ends),
    slope,
    intercept,
    residualSd,
    pooledSd,
    degreesOfFreedom,
    within: x >= Math.min(...xs) && x <= Math.max(...xs),
  }
}

/** Both ends of Fieller's interval; `repeats` is null where the mean itself is meant. */
function fiellerEnds(
  { slope, centre, spread, n }: StraightLine,
  { x, g, reach, repeats }: { x: number; g: number; reach: number; repeats: number | null },
): [number, number] {
  const off = x - centre
  const share = (repeats === null ? 0 : 1 / repeats) + 1 / n
  const half = (reach / slope) * Math.sqrt(off ** 2 / spread + (1 - g) * share)
  return [x + (off * g - half) / (1 - g), x + (off * g + half) / (1 - g)]
}
