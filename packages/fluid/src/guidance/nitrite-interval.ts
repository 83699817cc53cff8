import type { Reported } from '../estimate/events.ts'
import type { Days } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { isUnder } from './reported-range.ts'

/** One result, and the day it belongs to. */
export interface DatedResult {
  /** Whole days of any count. */
  day: number
  value: Reported
}

export interface CalmRule {
  /** The interval as long as nothing shows that it may be longer. */
  days: Days
  calm: {
    /** mg/L. */
    below: number
    inARow: number
    /** The longest interval that may follow. */
    longest: Days
  }
}

export interface CalmInterval {
  days: Days
  /** Results under the bound, one after the other, up to the last. */
  run: number
  /** `calm`: enough of them; `over`: the last one is not under the bound; `too-few`: not enough of them yet. */
  because: 'calm' | 'over' | 'too-few'
}

/**
 * The days until the next test of a rule that grows longer after calm results: weekly; after three results in a row under
 * 10 mg/L up to four weeks; with one above it weekly again.
 *
 * Three things the rule leaves open are taken the shorter way: a result that may be on the bound or over it ends the run, as does a gap
 * longer than the longest interval (then nothing was kept up), and a class of a strip counts as under the bound only where all of it is.
 * Give it the results of the present charge alone.
 *
 * Source: TRGS 611 (May 2007), 5.3 (1) and (2), read.
 *
 * @param results in any order
 * @throws {RangeError} intervals or a run under 1, a longest interval shorter than the usual one
 * @example nitriteInterval([0, 7, 14].map((day) => ({ day, value: 5 })), { days: 7, calm: { below: 10, inARow: 3, longest: 28 } }).days // 28
 */
export function nitriteInterval(
  results: readonly DatedResult[],
  { days, calm: { below, inARow, longest } }: CalmRule,
): CalmInterval {
  requireRange('days', days, { min: 1 })
  requireRange('inARow', inARow, { min: 1 })
  requireRange('longest', longest, { min: days })
  let run = 0
  let last: number | null = null
  let isLastUnder = false
  for (const { day, value } of results.toSorted((a, b) => a.day - b.day)) {
    if (last !== null && day - last > longest) run = 0
    isLastUnder = isUnder(value, below)
    run = isLastUnder ? run + 1 : 0
    last = day
  }
  if (run >= inARow) return { days: longest, run, because: 'calm' }
  return { days, run, because: last !== null && !isLastUnder ? 'over' : 'too-few' }
}
