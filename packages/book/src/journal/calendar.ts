import { Temporal } from 'temporal-polyfill'
import { stretchAt } from './zone-offset.ts'

/** The instant at which a calendar day begins in a zone, as fixed-width UTC text. */
export function startOfDay(day: string, timeZone: string): string {
  const start = Temporal.PlainDate.from(day).toZonedDateTime({ timeZone })
  return new Date(start.epochMilliseconds).toISOString()
}

/** The calendar day of an instant in a zone, `2026-10-05`. */
export function dayOf(instant: string, timeZone: string): string {
  return new Date(dayNumberOf(instant, timeZone) * dayMs).toISOString().slice(0, 10)
}

/** Whole calendar days from one instant's day to another's, in a zone. */
export function daysBetween(from: string, to: string, timeZone: string): number {
  return dayNumberOf(to, timeZone) - dayNumberOf(from, timeZone)
}

const dayMs = 86_400_000

/** Days since 1970-01-01 by the zone's clock. */
function dayNumberOf(instant: string, timeZone: string): number {
  const ms = Date.parse(instant)
  if (Number.isNaN(ms)) throw new RangeError(`instant is ${instant}, expected one such as 2026-03-03T09:30:00Z`)
  return Math.floor((ms + stretchAt(timeZone, ms).offset) / dayMs)
}
