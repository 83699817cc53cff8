import type { Brix, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { studentQuantile } from '../statistics/student.ts'
import { type Curvature, curvatureOf } from './curvature.ts'
import { type CalibrationPoint, fitLine, type StraightLine } from './line.ts'

/** A mix made up by measure, and what the refractometer shows on it. */
export interface KnownMix {
  /** As made up, 0 to 100. */
  percent: Percent
  /** As read, less what the instrument shows on the water, 0 to 95. */
  brix: Brix
}

export interface FactorOptions {
  /** Whether plain water is taken to read 0: true where the instrument was set to zero on the water the mixes are made with. Default true. */
  throughZero?: boolean | undefined
}

/** The product's factor, or that these mixes give none. */
export type ProductFactor =
  | {
      outcome: 'factor'
      /** Percent per °Brix: 1 / slope of °Brix on percent. */
      factor: number
      /** Null where a single mix leaves no notion of the scatter. */
      low90: number | null
      high90: number | null
      /** °Brix about the line; null as above. */
      residualSd: Brix | null
      /** °Brix at 0 %; 0 through zero. */
      intercept: Brix
      n: number
      /** Whether the product is a straight line; null where too few different mixes tell. */
      curvature: Curvature | null
      /** What a line not held to zero would show on plain water, and whether that is more than scatter; null where too few mixes tell. */
      zero: { brix: Brix; off: boolean } | null
    }
  /** °Brix does not rise with percent beyond its scatter. */
  | { outcome: 'no-slope'; slope: number }

/**
 * A product's factor from mixes of known strength. °Brix is what scatters, so °Brix is regressed on percent, and the factor
 * is the slope's reciprocal; so are the ends of its interval:
 *
 *     brix = percent / factor (+ intercept)
 *     low90, high90 = 1 / (slope ± t · slopeSd)              t of Student, 90 %, with n − 1 (n − 2) degrees of freedom
 *
 * The percents are taken as exact: measure concentrate by mass or burette, not by bucket marks. A factor belongs to a product and lot.
 *
 * Source: DGUV Regel 109-003 §7.1.1 (reading times factor); least squares as in {@link fitLine}.
 *
 * @throws {RangeError} a quantity outside the range its field gives, too few different mixes
 * @example productFactor([{ percent: 4, brix: 2.5 }, { percent: 8, brix: 5 }]) // factor 1.6
 */
export function productFactor(mixes: readonly KnownMix[], { throughZero = true }: FactorOptions = {}): ProductFactor {
  requireMixes(mixes)
  const points = mixes.map(({ percent, brix }) => ({ x: percent, y: brix }))
  const line = fitLine(points, { throughZero, name: 'mixes' })
  const { slope, slopeSd, residualSd, intercept, n } = line
  const reach = slopeSd === null ? 0 : studentT(0.95, line) * slopeSd
  if (slope - reach <= 0) return { outcome: 'no-slope', slope }
  return {
    outcome: 'factor',
    factor: 1 / slope,
    low90: slopeSd === null ? null : 1 / (slope + reach),
    high90: slopeSd === null ? null : 1 / (slope - reach),
    residualSd,
    intercept,
    n,
    ...departuresOf(points, throughZero),
  }
}

/** Readings that miss zero look bent to a line held to it: where a free line lies straight among them, it is the zero that is off. */
function departuresOf(points: readonly CalibrationPoint[], throughZero: boolean) {
  const zero = zeroOf(points)
  const curvature = curvatureOf(points, { throughZero })
  if (!throughZero || zero?.off !== true || curvature?.bent !== true) return { curvature, zero }
  const free = curvatureOf(points)
  return { curvature: free?.bent === false ? free : curvature, zero }
}

/** Whether a free line misses zero by more than its scatter, at 95 %; null where mixes lie within 0.01 % of each other. */
function zeroOf(points: readonly CalibrationPoint[]): { brix: Brix; off: boolean } | null {
  const percents = points.map(({ x }) => x)
  const apart = Math.max(...percents) - Math.min(...percents)
  if (points.length < 3 || apart < 0.01) return null
  const line = fitLine(points)
  const noise = 1e-9 * Math.max(...points.map(({ y }) => Math.abs(y)))
  return { brix: line.intercept, off: Math.abs(line.intercept) > noise + studentT(0.975, line) * line.interceptSd! }
}

const studentT = (probability: number, { degreesOfFreedom }: StraightLine) =>
  studentQuantile({ probability, degreesOfFreedom })

export function requireMixes(mixes: readonly KnownMix[]): void {
  for (const [index, { percent, brix }] of mixes.entries()) {
    requireRange(`mixes.${index}.percent`, percent, { min: 0, max: 100 })
    requireRange(`mixes.${index}.brix`, brix, { min: 0, max: 95 })
  }
}
