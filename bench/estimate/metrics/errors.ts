/** The middle of some figures; of an even number the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return Number.NaN
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

/** The share of errors that the trimmed root mean square leaves out. */
export const trimmedShare = 0.01

/**
 * Root mean square of errors without the largest of them: ⌊1 % of their number⌋ with the greatest absolute value are
 * left out, so that one wild figure in a hundred does not hide the ninety-nine.
 */
export function trimmedRmse(errors: readonly number[], share = trimmedShare): number {
  if (errors.some((error) => !Number.isFinite(error))) throw new RangeError('an error that is not finite')
  if (errors.length === 0) return Number.NaN
  const sorted = errors.map(Math.abs).sort((a, b) => a - b)
  const kept = sorted.slice(0, sorted.length - Math.floor(sorted.length * share))
  return Math.sqrt(kept.reduce((sum, error) => sum + error * error, 0) / kept.length)
}
