import { Temporal } from 'temporal-polyfill'

/** The instant at which a calendar day begins in a zone, as fixed-width UTC text. */
export function startOfDay(day: string, timeZone: string): string {
  const start = Temporal.PlainDate.from(day).toZonedDateTime({ timeZone })
  return new Date(start.epochMilliseconds).toISOString()
}

/** The calendar day of an instant in a zone, `2026-10-05`. */
export function dayOf(instant: string, timeZone: string): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().toString()
}

/** Whole calendar days from one instant's day to another's, in a zone. */
export function daysBetween(from: string, to: string, timeZone: string): number {
  const start = Temporal.PlainDate.from(dayOf(from, timeZone))
  return start.until(Temporal.PlainDate.from(dayOf(to, timeZone))).days
}
