import { OutOfRange } from '../require.ts'

/**
 * The middle one of the values in order; of an even count the mean of the two in the middle.
 *
 * @throws {RangeError} no values
 * @example median([3, 1, 2, 10]) // 2.5
 */
export function median(values: ArrayLike<number>): number {
  if (values.length === 0) throw new OutOfRange('values', 0, 'at least 1')
  const sorted = Float64Array.from(values).sort()
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}
