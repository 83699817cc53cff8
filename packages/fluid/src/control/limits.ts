import { requireRange } from '../require.ts'

/** Limits that are hard: reaching beyond one is a matter in itself, whatever a chart says. */
export interface HardLimits {
  low?: number | undefined
  high?: number | undefined
  /** How far back inside a value must come before the alarm ends, in the unit of the values; 0 or more. */
  hysteresis: number
}

export type LimitState = 'inside' | 'low' | 'high'

export interface LimitCourse {
  /** After each value. */
  states: LimitState[]
  /** Where an alarm begins; `index` counts from 0. It is not raised again before it has ended. */
  signals: { index: number; rule: 'upper' | 'lower' }[]
}

/**
 * How a series stands to its hard limits. A value on a limit is inside. An alarm begins beyond the limit and lasts until a value lies `hysteresis`
 * inside it, so that a reading that dances about the limit is one alarm, not ten.
 *
 * @throws {RangeError} no limit at all, a high limit below the low one, a hysteresis wider than both allow, a value that is no number
 * @example limitCourse([8.4, 8.52, 8.7], { low: 8.5, hysteresis: 0.1 }).states // ['low', 'low', 'inside']
 */
export function limitCourse(values: readonly number[], { low, high, hysteresis }: HardLimits): LimitCourse {
  const [floor, ceiling] = [low ?? Number.NEGATIVE_INFINITY, high ?? Number.POSITIVE_INFINITY]
  if (low !== undefined || high === undefined) requireRange('low', low ?? Number.NaN, {})
  if (high !== undefined) requireRange('high', high, { min: low })
  requireRange('hysteresis', hysteresis, {
    min: 0,
    max: Number.isFinite(ceiling - floor) ? ceiling - floor : undefined,
  })
  let state: LimitState = 'inside'
  const signals: LimitCourse['signals'] = []
  const states = values.map((value, index) => {
    requireRange(`values.${index}`, value, {})
    const before = state
    if (value > ceiling) state = 'high'
    else if (value < floor) state = 'low'
    else if (state === 'high' && value <= ceiling - hysteresis) state = 'inside'
    else if (state === 'low' && value >= floor + hysteresis) state = 'inside'
    if (state !== before && state !== 'inside') signals.push({ index, rule: state === 'high' ? 'upper' : 'lower' })
    return state
  })
  return { states, signals }
}
