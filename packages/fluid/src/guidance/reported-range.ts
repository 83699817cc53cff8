import type { Reported } from '../estimate/events.ts'

/** The values a figure or a class leaves open: from `low` on, up to and without `high`; of a figure both are the same. */
export interface ValueRange {
  low: number
  high: number
}

/** @example rangeOf({ below: 10 }) // { low: 0, high: 10 } */
export function rangeOf(value: Reported): ValueRange {
  if (typeof value === 'number') return { low: value, high: value }
  if ('low' in value) return { low: value.low, high: value.high }
  return 'below' in value ? { low: 0, high: value.below } : { low: value.atLeast, high: Number.POSITIVE_INFINITY }
}

/** Whether every value it leaves open lies under a bound. */
export const isUnder = (value: Reported, bound: number): boolean => {
  const { low, high } = rangeOf(value)
  return low === high ? high < bound : high <= bound
}

/** Whether any value it leaves open lies over a bound. */
export const mayBeOver = (value: Reported, bound: number): boolean => rangeOf(value).high > bound
