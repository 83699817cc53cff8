import { requireRange } from '../require.ts'

/** What is used of something that is not asked for in every period. */
export interface IntermittentDemand {
  /** Of a period in which anything is used. */
  size: number
  /** Periods from one use to the next. */
  interval: number
  /** Croston's rate a period, size / interval; some per cent too high. */
  rate: number
  /** The same without most of that, (1 − α/2) · size / interval. */
  corrected: number
}

/**
 * The mean use a period of something seldom used. Sizes and intervals are smoothed apart, and only where something was used:
 *
 *     size     ← size + α · (used − size)            interval ← interval + α · (periods since the last use − interval)
 *     rate = size / interval                          corrected = (1 − α / 2) · rate
 *
 * It begins with the first use and its place. What has stopped being used keeps its last rate: look at when it was last used.
 *
 * Source: J. D. Croston, Operational Research Quarterly 23 (1972) 289; A. A. Syntetos, J. E. Boylan, International Journal of
 * Forecasting 21 (2005) 303.
 *
 * @param used in each period, oldest first
 * @param alpha weight of the newest, above 0, at most 1
 * @returns null where nothing was ever used
 * @throws {RangeError} an amount below 0, an alpha outside its range
 * @example intermittentDemand([0, 0, 5, 0, 0, 0, 3, 0, 4, 0], 0.1) // size 4.72, interval 2.99, rate 1.5786
 */
export function intermittentDemand(used: readonly number[], alpha: number): IntermittentDemand | null {
  requireRange('alpha', alpha, { above: 0, max: 1 })
  let [size, interval, since] = [0, 0, 0]
  let isBegun = false
  for (const amount of used) {
    requireRange('used', amount, { min: 0 })
    since += 1
    if (amount === 0) continue
    size = isBegun ? size + alpha * (amount - size) : amount
    interval = isBegun ? interval + alpha * (since - interval) : since
    isBegun = true
    since = 0
  }
  if (!isBegun) return null
  const rate = size / interval
  return { size, interval, rate, corrected: (1 - alpha / 2) * rate }
}
