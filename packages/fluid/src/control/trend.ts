import { OutOfRange, requireRange } from '../require.ts'
import { median } from '../statistics/median.ts'
import { normalAbove, normalQuantile } from '../statistics/normal.ts'

/** One value of a series, and when it was. */
export interface TimedValue {
  /** In any unit of time; days, mostly. Equal times are allowed. */
  at: number
  value: number
}

/** Whether and how fast a series rises or falls. */
export interface Trend {
  /** Units of value a unit of time: the median of all slopes between two observations. */
  slope: number
  /** At time 0: median of the values less slope × median of the times. */
  intercept: number
  /** Ends of the slope's interval at `level`. */
  low: number
  high: number
  level: number
  /** Pairs that rise less pairs that fall. */
  score: number
  /** Of the score if there were no trend, ties counted. */
  variance: number
  /** The score in standard deviations, drawn one towards 0 for continuity. */
  z: number
  /** Chance of a score as far from 0 without a trend, both ways. */
  pValue: number
  /** Kendall's tau-b, −1 to 1; 0 where all values or all times are equal. */
  tau: number
  /** What holds at `level`. */
  direction: 'rising' | 'falling' | 'none'
  n: number
}

/**
 * A trend that single wild values cannot make: the slope of Theil and Sen, the test of Mann and Kendall.
 *
 *     slope = median of (value_j − value_i) / (at_j − at_i)             all pairs of different times
 *     score = Σ sign(value_j − value_i) · sign(at_j − at_i)             z = (score ∓ 1) / √variance
 *     low, high = the slopes ranked (N − C)/2 and (N + C)/2 + 1 of N,   C = z(level) · √variance, between ranks on a straight line
 *
 * The normal approximation wants ten observations; with fewer the p-value is rough. Values that hang on the ones before (daily readings of a slow
 * sump) make any trend look surer than it is.
 *
 * Source: P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379–1389; M. G. Kendall, Rank Correlation Methods (variance with ties in both); R. O. Gilbert,
 * Statistical Methods for Environmental Pollution Monitoring (1987), chapters 16 and 17 (limits between ranks).
 *
 * @throws {RangeError} fewer than 3 observations or more than 3000, one that is no number, all at one time
 * @example trendOf([{ at: 0, value: 1 }, { at: 1, value: 3 }, { at: 2, value: 5 }]).slope // 2
 */
export function trendOf(observations: readonly TimedValue[], { level = 0.9 }: { level?: number } = {}): Trend {
  requireRange('level', level, { min: 0.5, max: 0.999 })
  requireRange('observations', observations.length, { min: 3, max: 3000 })
  for (const [index, { at, value }] of observations.entries()) {
    requireRange(`observations.${index}.at`, at, { min: -1e12, max: 1e12 })
    requireRange(`observations.${index}.value`, value, { min: -1e12, max: 1e12 })
  }
  const times = observations.map(({ at }) => at)
  const values = observations.map(({ value }) => value)
  const { slopes, score } = pairsOf(times, values)
  if (slopes.length === 0) throw new OutOfRange('observations', 1, 'observations at 2 different times at least')

  const slope = median(slopes)
  const variance = varianceOf(times, values)
  const z = variance === 0 ? 0 : (score - Math.sign(score)) / Math.sqrt(variance)
  const pValue = 2 * normalAbove(Math.abs(z))
  const reach = normalQuantile((1 + level) / 2) * Math.sqrt(variance)
  return {
    slope,
    intercept: median(values) - slope * median(times),
    low: ranked(slopes, (slopes.length - reach) / 2),
    high: ranked(slopes, (slopes.length + reach) / 2 + 1),
    level,
    score,
    variance,
    z,
    pValue,
    tau: tauOf(score, times, values),
    direction: pValue > 1 - level ? 'none' : score > 0 ? 'rising' : 'falling',
    n: values.length,
  }
}

function pairsOf(times: readonly number[], values: readonly number[]): { slopes: Float64Array; score: number } {
  const slopes = new Float64Array((values.length * (values.length - 1)) / 2)
  let [count, score] = [0, 0]
  for (const [j, later] of values.entries()) {
    for (let i = 0; i < j; i += 1) {
      const [run, rise] = [times[j]! - times[i]!, later - values[i]!]
      score += Math.sign(run) * Math.sign(rise)
      if (run !== 0) slopes[count++] = rise / run
    }
  }
  return { slopes: slopes.subarray(0, count).sort(), score }
}

/** The value at a rank from 1, on a straight line between two whole ranks, held to the first and the last. */
function ranked(sorted: Float64Array, rank: number): number {
  const place = Math.min(Math.max(rank, 1), sorted.length) - 1
  const below = Math.floor(place)
  const [from, to] = [sorted[below]!, sorted[Math.min(below + 1, sorted.length - 1)]!]
  return from + (place - below) * (to - from)
}

function varianceOf(times: readonly number[], values: readonly number[]): number {
  const n = values.length
  const [t, u] = [tiesOf(times), tiesOf(values)]
  const [ordinary, doubly, triply] = [18, 2 * n * (n - 1), 9 * n * (n - 1) * (n - 2)]
  return (
    (n * (n - 1) * (2 * n + 5) - t.five - u.five) / ordinary + (t.two * u.two) / doubly + (t.three * u.three) / triply
  )
}

function tauOf(score: number, times: readonly number[], values: readonly number[]): number {
  const pairs = values.length * (values.length - 1)
  const untied = Math.sqrt((pairs - tiesOf(times).two) * (pairs - tiesOf(values).two)) / 2
  return untied === 0 ? 0 : score / untied
}

/** Over the groups of equal numbers, m in each: Σ m(m−1), Σ m(m−1)(m−2), Σ m(m−1)(2m+5). */
function tiesOf(numbers: readonly number[]): { two: number; three: number; five: number } {
  const groups = new Map<number, number>()
  for (const number of numbers) groups.set(number, (groups.get(number) ?? 0) + 1)
  const ties = { two: 0, three: 0, five: 0 }
  for (const m of groups.values()) {
    ties.two += m * (m - 1)
    ties.three += m * (m - 1) * (m - 2)
    ties.five += m * (m - 1) * (2 * m + 5)
  }
  return ties
}
