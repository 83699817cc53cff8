import { requireRange } from '../require.ts'

/** How something is used: in most periods or with gaps, in like amounts or in unlike ones. */
export type DemandPattern = 'steady' | 'uneven' | 'now-and-then' | 'lumpy'

/** Periods from one use to the next from which on use counts as intermittent. */
export const gapsFrom = 1.32
/** Squared coefficient of variation of the amounts from which on they count as unlike. */
export const unlikeFrom = 0.49

/**
 * By which rule something is best forecast:
 *
 *     interval = periods / periods with any use            variation² = variance of the amounts used / mean²
 *
 *                        variation² below 0.49      0.49 and more
 *     interval below 1.32    steady                     uneven
 *     1.32 and more          now-and-then               lumpy
 *
 * The variance is that of the amounts at hand (divided by their count).
 *
 * Source: A. A. Syntetos, J. E. Boylan, J. D. Croston, Journal of the Operational Research Society 56 (2005) 495, who call the four smooth, erratic,
 * intermittent and lumpy; bounds from memory.
 *
 * @returns null where nothing was used
 * @throws {RangeError} an amount below 0
 * @example demandPattern([5, 0, 5, 0]) // { pattern: 'now-and-then', interval: 2, variation2: 0 }
 */
export function demandPattern(
  used: readonly number[],
): { pattern: DemandPattern; interval: number; variation2: number } | null {
  for (const amount of used) requireRange('used', amount, { min: 0 })
  const amounts = used.filter((amount) => amount > 0)
  if (amounts.length === 0) return null
  const mean = amounts.reduce((sum, amount) => sum + amount, 0) / amounts.length
  const variance = amounts.reduce((sum, amount) => sum + (amount - mean) ** 2, 0) / amounts.length
  const [interval, variation2] = [used.length / amounts.length, variance / mean ** 2]
  return { pattern: patternOf(interval, variation2), interval, variation2 }
}

function patternOf(interval: number, variation2: number): DemandPattern {
  if (interval < gapsFrom) return variation2 < unlikeFrom ? 'steady' : 'uneven'
  return variation2 < unlikeFrom ? 'now-and-then' : 'lumpy'
}
