import { refusal } from '../errors.ts'
import { dayNumber, dayText, type ShopClock } from '../estimate/shop-clock.ts'
import type { DaySpan } from './answer-types.ts'

/** The longest span that is read at once. */
export const longestDays = 1100

/** A span with its instants. */
export interface Span extends DaySpan {
  /** Whole days since 1970-01-01. */
  firstDay: number
  days: number
  /** Its first instant, milliseconds since 1970-01-01 UTC. */
  since: number
  /** The instant after its last. */
  before: number
}

/**
 * The instants of days.
 *
 * @throws {BookError} `refused-input` where the last day lies before the first, or too far after it
 */
export function spanOf({ from, to }: DaySpan, clock: ShopClock): Span {
  const [firstDay, lastDay] = [dayNumber(from), dayNumber(to)]
  const days = lastDay - firstDay + 1
  if (!(days >= 1 && days <= longestDays)) {
    const expected = `a day from ${from} on, at most ${longestDays} days in all`
    throw refusal([{ pointer: '/to', found: to, expected }], 'request')
  }
  return { from, to, firstDay, days, since: clock.instantOf(firstDay), before: clock.instantOf(lastDay + 1) }
}

/** The days of a month, `2026-10`. */
export function daysOfMonth(month: string): DaySpan {
  const [year, number] = month.split('-').map(Number) as [number, number]
  const last = new Date(Date.UTC(year, number, 0)).getUTCDate()
  return { from: `${month}-01`, to: `${month}-${String(last).padStart(2, '0')}` }
}

/** The month of a time of the shop, `2026-10`. */
export const monthOf = (day: number): string => dayText(Math.floor(day)).slice(0, 7)
