import { type Fault, refusal } from '../errors.ts'
import { instant } from '../schema/values.ts'

/** What somebody wants to know of a shop's sumps. */
export interface EstimateQuestion {
  /** RFC 3339 with offset; entries after it are not used. */
  at: string
  /** Days ahead, in the order in which they are answered. */
  ahead?: readonly number[]
  /** One sump alone. */
  sump?: string
}

/** Days ahead where nobody asked for others. */
export const usualAhead: readonly number[] = [7, 14]
/** Further ahead nothing is worth saying. */
const furthestDays = 3660
const mostDays = 400

/**
 * The days that a list such as `7,14` names.
 *
 * @throws {BookError} `refused-input` a part that is no number of days from 0 to 3660
 */
export function readAhead(text: string): number[] {
  return text.split(',').map((part, i) => {
    const days = part.trim() === '' ? Number.NaN : Number(part)
    if (!isDays(days)) throw refusal([daysFault(`/ahead/${i}`, JSON.stringify(part))], 'question')
    return days
  })
}

/** @throws {BookError} `refused-input` naming what is wrong with it */
export function checkQuestion({ at, ahead = [] }: EstimateQuestion): void {
  const faults: Fault[] = ahead.flatMap((days, i) => (isDays(days) ? [] : [daysFault(`/ahead/${i}`, String(days))]))
  if (ahead.length > mostDays)
    faults.push({ pointer: '/ahead', found: `${ahead.length} days`, expected: `at most ${mostDays}` })
  if (!instant.safeParse(at).success) {
    const expected = 'a time with offset, such as 2026-03-03T09:30:00+01:00'
    faults.push({ pointer: '/at', found: JSON.stringify(at), expected })
  }
  if (faults.length > 0) throw refusal(faults, 'question')
}

const isDays = (days: number) => days >= 0 && days <= furthestDays
const daysFault = (pointer: string, found: string): Fault => ({
  pointer,
  found,
  expected: `a number of days from 0 to ${furthestDays}`,
})
