import type { Days } from '../quantities.ts'

/** A quantity that grows by `gain` and loses the share `loss` of itself, both a day: y' = gain − loss · y. */
export interface Course {
  start: number
  gain: number
  /** 0 or more. */
  loss: number
}

/** What the course approaches; null where it has no end. */
export const steady = ({ gain, loss }: Course): number | null => ratio(gain, loss)

/** Null where it has no end. */
export function ratio(dividend: number, divisor: number): number | null {
  const quotient = dividend / divisor
  return Number.isFinite(quotient) ? quotient : null
}

/** y(t) = start · e^(−loss t) + gain · (1 − e^(−loss t)) / loss, in a form that stays exact as the loss goes to nothing. */
export function after({ start, gain, loss }: Course, day: Days): number {
  const weight = isNothing(loss * day) ? day : -Math.expm1(-loss * day) / loss
  return start * Math.exp(-loss * day) + gain * weight
}

/** The first day on which the course is at or above `limit`; null if it never is. */
export function dayAt({ start, gain, loss }: Course, limit: number): Days | null {
  if (start >= limit) return 0
  const pull = gain - loss * limit
  if (pull <= 0) return null
  const straight = (limit - start) / pull
  const day = isNothing(loss * straight) ? straight : Math.log1p(loss * straight) / loss
  return Number.isFinite(day) ? day : null
}

/** A share too small to bend a straight line in a double; divided by, the smallest of them would lose their digits. */
const isNothing = (share: number) => share < 1e-16
