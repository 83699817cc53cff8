import type { Days, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A strength that was read, and when, in days of the shop. */
export interface StrengthRead {
  at: Days
  concentration: Percent
}

/** Whole days from one on, and how far a reading reaches. */
export interface StrengthSpan {
  /** The first day. */
  from: Days
  /** How many. */
  days: number
  /** A day is known where a reading lies no more than this before its noon; 7 without it. */
  reach?: Days | undefined
}

/**
 * How strong a sump was day by day, by its readings alone: at noon, on the straight line between the reading before and the one after where both lie
 * within `reach`, else as last read; null where nothing was read for longer. What was poured between two readings does not show: for how sure a day
 * is, ask the estimate.
 *
 * @param readings oldest first
 * @throws {RangeError} a span that is no whole number of days
 * @example strengthDays([{ at: 0.5, concentration: 6 }, { at: 2.5, concentration: 8 }], { from: 0, days: 3 }) // [6, 7, 8]
 */
export function strengthDays(
  readings: readonly StrengthRead[],
  { from, days, reach = 7 }: StrengthSpan,
): (Percent | null)[] {
  requireRange('days', days, { min: 0, max: 100_000 })
  let next = 0
  return Array.from({ length: days }, (_, i) => {
    const noon = from + i + 0.5
    while (next < readings.length && readings[next]!.at <= noon) next += 1
    const [before, after] = [readings[next - 1], readings[next]]
    if (before === undefined || noon - before.at > reach) return null
    if (after === undefined || after.at - noon > reach) return before.concentration
    const share = (noon - before.at) / (after.at - before.at)
    return before.concentration + share * (after.concentration - before.concentration)
  })
}
