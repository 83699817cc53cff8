import { requireRange } from '../require.ts'
import { type ChartReference, referenceOf } from './individuals.ts'

export interface EwmaOptions extends ChartReference {
  /** Share of the newest value, above 0 to 1; default 0.2. */
  lambda?: number | undefined
  /** Limits in standard deviations of the average, above 0; default 3. */
  width?: number | undefined
}

export interface EwmaChart {
  kind: 'ewma'
  centre: number
  sd: number
  /** One a point: narrow at first, soon steady. */
  upper: number[]
  lower: number[]
  points: number[]
  /** `index` counts from 0. */
  signals: { index: number; rule: 'upper' | 'lower' }[]
}

/**
 * A chart of the exponentially weighted moving average: one chart that sees a jump nearly as well as single values do and a slow slide far sooner.
 *
 *     average = lambda · value + (1 − lambda) · average before it,        starting from the centre
 *     limits = centre ± width · sd · √(lambda / (2 − lambda) · (1 − (1 − lambda)^(2 i)))        at the i-th value
 *
 * With lambda 0.2 and width 3 a false signal comes once in about 560 values, a lasting shift of one sd is seen after about 11 (from
 * memory, for limits held at their last width; the narrow first limits used here signal a little sooner, false and true).
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4; J. M. Lucas, M. S. Saccucci, Technometrics 32 (1990) 1–12.
 *
 * @throws {RangeError} a quantity outside the range its field gives, fewer than 2 values without an sd
 * @example ewmaChart([11, 12], { target: 10, sd: 1, lambda: 0.5 }).points // [10.5, 11.25]
 */
export function ewmaChart(
  values: readonly number[],
  { lambda = 0.2, width = 3, ...reference }: EwmaOptions = {},
): EwmaChart {
  requireRange('lambda', lambda, { above: 0, max: 1 })
  requireRange('width', width, { above: 0 })
  const { centre, sd } = referenceOf(values, reference)
  let average = centre
  const points = values.map((value) => {
    average = lambda * value + (1 - lambda) * average
    return average
  })
  const reaches = values.map(
    (_, index) => width * sd * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * (index + 1)))),
  )
  const upper = reaches.map((reach) => centre + reach)
  const lower = reaches.map((reach) => centre - reach)
  const signals = points.flatMap((point, index): EwmaChart['signals'] => {
    if (point > upper[index]!) return [{ index, rule: 'upper' }]
    return point < lower[index]! ? [{ index, rule: 'lower' }] : []
  })
  return { kind: 'ewma', centre, sd, upper, lower, points, signals }
}
