import { OutOfRange, requireRange } from '../require.ts'
import { type ChartReference, referenceOf } from './individuals.ts'

export interface CusumOptions extends ChartReference {
  /** Slack a value: half of the shift to be found, 0 or more. In sd where an sd is given, else in the unit of the values. 0.5 sd unless given. */
  k?: number | undefined
  /** Decision limit of the sums, above 0, in the same unit as `k`. 5 sd unless given. */
  h?: number | undefined
}

export interface CusumChart {
  kind: 'cusum'
  /** Of the sums: 0. */
  centre: 0
  /** What the values are held against. */
  target: number
  sd: number
  /** The decision limit in the unit of the values, for both sums; `lower` is its mirror image, for charts that draw the sum of shortfalls downwards. */
  upper: number
  lower: number
  /** The sums of excess and of shortfall after each value, both 0 or more. */
  points: { above: number; below: number }[]
  /** `index` counts from 0; `upper` for a rise, `lower` for a fall. */
  signals: { index: number; rule: 'upper' | 'lower' }[]
}

/**
 * The two cumulative sums of a tabular CUSUM: the chart for small shifts that last.
 *
 *     above = max(0, above before it + value − target − k)
 *     below = max(0, below before it + target − k − value)            a signal where one of them passes h
 *
 * With k = 0.5 sd and h = 5 sd a false signal comes once in about 465 values, a lasting shift of one sd is seen after about 10. The sums are not set
 * back after a signal. The last value at which a sum was 0 is where the shift most likely began.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; D. C. Montgomery, Introduction to Statistical Quality Control, chapter 9.
 *
 * @throws {RangeError} a quantity outside the range its field gives, fewer than 2 values without an sd, one of `k` and `h` alone without an sd
 * @example cusumChart([10, 12], { target: 10, sd: 1 }).points // [{ above: 0, below: 0 }, { above: 1.5, below: 0 }]
 */
export function cusumChart(values: readonly number[], { k, h, ...reference }: CusumOptions = {}): CusumChart {
  if (k !== undefined) requireRange('k', k, { min: 0 })
  if (h !== undefined) requireRange('h', h, { above: 0 })
  const inValues = reference.sd === undefined && (k !== undefined || h !== undefined)
  if (inValues && k === undefined) throw new OutOfRange('k', Number.NaN, 'k beside h, or an sd to reckon in')
  if (inValues && h === undefined) throw new OutOfRange('h', Number.NaN, 'h beside k, or an sd to reckon in')
  const { centre: target, sd } = referenceOf(values, reference)
  const unit = inValues ? 1 : sd
  const [slack, limit] = [(k ?? 0.5) * unit, (h ?? 5) * unit]

  let [above, below] = [0, 0]
  const points = values.map((value) => {
    above = Math.max(0, above + value - target - slack)
    below = Math.max(0, below + target - slack - value)
    return { above, below }
  })
  const signals = points.flatMap(({ above, below }, index): CusumChart['signals'] => [
    ...(above > limit ? [{ index, rule: 'upper' as const }] : []),
    ...(below > limit ? [{ index, rule: 'lower' as const }] : []),
  ])
  return { kind: 'cusum', centre: 0, target, sd, upper: limit, lower: -limit, points, signals }
}
