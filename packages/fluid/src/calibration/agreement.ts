import { type Trend, trendOf } from '../control/trend.ts'
import type { Days, Percent, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { normalQuantile } from '../statistics/normal.ts'
import { studentQuantile } from '../statistics/student.ts'

/** One sample measured by both methods. */
export interface MethodPair {
  refractometer: Percent
  titration: Percent
  /** When, counted from any day. */
  day?: Days | undefined
}

/** How two methods agree; differences are refractometer less titration. */
export interface Agreement {
  n: number
  meanDifference: Percent
  /** Of single differences. */
  sd: Sd
  /** Between these the differences of single samples lie, `level` of them. */
  lower: Percent
  upper: Percent
  /** Interval of the mean difference at `level`: one that leaves out 0 is a bias. */
  meanLow: Percent
  meanHigh: Percent
  /** By how much the limits themselves may be off, either way, at `level`. */
  limitReach: Percent
  /** How the difference moves, in percent a day: a refractometer that creeps up on titration reads tramp oil or salts. Null without days. */
  trend: Trend | null
}

/**
 * Whether refractometer and titration say the same, over time.
 *
 *     lower, upper = meanDifference ± z · sd            z = 1.96 at 95 %
 *     meanLow, meanHigh = meanDifference ± t · sd / √n
 *     limitReach = t · sd · √(3 / n)                    t of Student, n − 1 degrees of freedom
 *
 * A high correlation says nothing here: two methods can rise together and never agree. Which of the two is right this cannot tell.
 *
 * Source: J. M. Bland, D. G. Altman, "Statistical methods for assessing agreement between two methods of clinical measurement", Lancet 327 (1986)
 * 307–310 (they round z to 2).
 *
 * @throws {RangeError} fewer than 2 pairs, a quantity outside the range its field gives
 * @example methodAgreement([{ refractometer: 8, titration: 7 }, { refractometer: 9, titration: 7.5 }]).meanDifference // 1.25
 */
export function methodAgreement(pairs: readonly MethodPair[], { level = 0.95 }: { level?: number } = {}): Agreement {
  requireRange('level', level, { min: 0.5, max: 0.999 })
  requireRange('pairs', pairs.length, { min: 2 })
  for (const [index, { refractometer, titration, day = 0 }] of pairs.entries()) {
    requireRange(`pairs.${index}.refractometer`, refractometer, { min: 0, max: 100 })
    requireRange(`pairs.${index}.titration`, titration, { min: 0, max: 100 })
    requireRange(`pairs.${index}.day`, day, {})
  }
  return {
    ...differencesOf(
      pairs.map(({ refractometer, titration }) => refractometer - titration),
      level,
    ),
    trend: trendIn(pairs, level),
  }
}

/** Limits of agreement of differences in any unit. */
export function differencesOf(differences: readonly number[], level: number): Omit<Agreement, 'trend'> {
  const n = differences.length
  const meanDifference = differences.reduce((sum, difference) => sum + difference, 0) / n
  const squares = differences.reduce((sum, difference) => sum + (difference - meanDifference) ** 2, 0)
  const sd = Math.sqrt(squares / (n - 1))
  const z = normalQuantile((1 + level) / 2)
  const t = studentQuantile({ probability: (1 + level) / 2, degreesOfFreedom: n - 1 })
  return {
    n,
    meanDifference,
    sd,
    lower: meanDifference - z * sd,
    upper: meanDifference + z * sd,
    meanLow: meanDifference - (t * sd) / Math.sqrt(n),
    meanHigh: meanDifference + (t * sd) / Math.sqrt(n),
    limitReach: t * sd * Math.sqrt(3 / n),
  }
}

function trendIn(pairs: readonly MethodPair[], level: number): Trend | null {
  const dated = pairs.flatMap(({ refractometer, titration, day }) =>
    day === undefined ? [] : [{ at: day, value: refractometer - titration }],
  )
  if (dated.length < 3 || new Set(dated.map(({ at }) => at)).size < 2) return null
  return trendOf(dated, { level })
}
