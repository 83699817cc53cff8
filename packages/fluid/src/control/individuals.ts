import { requireRange } from '../require.ts'
import { type NelsonRule, nelsonSignals } from './nelson.ts'

/** What a chart is drawn about; what is not given is reckoned from the values. */
export interface ChartReference {
  /** Centre; the mean of the values unless given. */
  target?: number | undefined
  /** Of single values, above 0; the mean moving range / 1.128 unless given. */
  sd?: number | undefined
}

export interface IndividualsOptions extends ChartReference {
  /** Limits in standard deviations, above 0; default 3. */
  width?: number | undefined
  /** Nelson's tests to run beside the limits, of which test 1 is one; default test 1 alone. */
  rules?: readonly NelsonRule[] | undefined
}

export interface IndividualsChart {
  kind: 'individuals'
  centre: number
  sd: number
  upper: number
  lower: number
  points: number[]
  /** `index` counts from 0. */
  signals: { index: number; rule: NelsonRule }[]
}

/**
 * A chart of single values.
 *
 *     upper, lower = centre ± width · sd              sd = mean of |value − the one before| / 1.128
 *
 * The moving range keeps slow drifts and single steps out of the standard deviation, where the plain one would take them in. 1.128 is the tabled d₂
 * of two values (2/√π).
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2.
 *
 * @throws {RangeError} fewer than 2 values without an sd, none at all, one that is no number
 * @example individualsChart([10, 12, 11, 10]) // centre 10.75, sd 1.18…
 */
export function individualsChart(
  values: readonly number[],
  { width = 3, rules = [1], ...reference }: IndividualsOptions = {},
): IndividualsChart {
  requireRange('width', width, { above: 0 })
  const { centre, sd } = referenceOf(values, reference)
  const [upper, lower] = [centre + width * sd, centre - width * sd]
  const beyond = rules.includes(1)
    ? values.flatMap((value, index) => (value > upper || value < lower ? [{ index, rule: 1 as NelsonRule }] : []))
    : []
  const others = nelsonSignals(values, { centre, sd, rules: rules.filter((rule) => rule !== 1) })
  const signals = [...beyond, ...others].sort((a, b) => a.index - b.index || a.rule - b.rule)
  return { kind: 'individuals', centre, sd, upper, lower, points: [...values], signals }
}

/** d₂ of two values as it stands in the tables. */
const movingRangeDivisor = 1.128

/**
 * Centre and standard deviation of a chart, given or from the values.
 *
 * @throws {RangeError} fewer than 2 values without an sd, none at all, one that is no number
 */
export function referenceOf(values: readonly number[], { target, sd }: ChartReference): { centre: number; sd: number } {
  requireRange('values', values.length, { min: sd === undefined ? 2 : 1 })
  for (const [index, value] of values.entries()) requireRange(`values.${index}`, value, { min: -1e12, max: 1e12 })
  if (target !== undefined) requireRange('target', target, { min: -1e12, max: 1e12 })
  if (sd !== undefined) requireRange('sd', sd, { above: 0, max: 1e12 })
  const ranges = values.slice(1).map((value, index) => Math.abs(value - values[index]!))
  return { centre: target ?? mean(values), sd: sd ?? mean(ranges) / movingRangeDivisor }
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
