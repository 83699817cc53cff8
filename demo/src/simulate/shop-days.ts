import { Temporal } from 'temporal-polyfill'

/** The calendar days that a simulation covers, as the shop's clock has them. */
export interface ShopDays {
  timeZone: string
  /** The days, `2026-03-03`; the last is the day of `until`. */
  dates: readonly string[]
  /** ISO day of the week, 1 is Monday, of each day. */
  weekdays: readonly number[]
  /** Milliseconds of each day's midnight, and of the midnight after the last. */
  midnights: readonly number[]
  /** The instant the simulation runs to, in milliseconds. */
  untilMs: number
}

/** A day by its index, and the hours since its midnight. */
export interface DayHour {
  day: number
  hours: number
}

/**
 * The `count` days before `until`, and its own.
 *
 * @throws {RangeError} `until` is not a time with offset
 */
export function shopDays(until: string, timeZone: string, count: number): ShopDays {
  const end = instantOf(until).toZonedDateTimeISO(timeZone)
  const last = end.toPlainDate()
  const days = Array.from({ length: count + 2 }, (_, i) => last.add({ days: i - count }))
  const midnights = days.map((day) => day.toZonedDateTime(timeZone).epochMilliseconds)
  const covered = days.slice(0, -1)
  return {
    timeZone,
    dates: covered.map(String),
    weekdays: covered.map((day) => day.dayOfWeek),
    midnights,
    untilMs: end.epochMilliseconds,
  }
}

function instantOf(until: string) {
  try {
    return Temporal.Instant.from(until)
  } catch {
    throw new RangeError(`until must be a time with offset, such as 2026-03-03T09:30:00+01:00, not "${until}"`)
  }
}

/** The index of the last day. */
export const lastDay = ({ dates }: ShopDays): number => dates.length - 1

/** The milliseconds of a time of day, `05:35`, by the shop's clock. */
export function timeOn({ dates, timeZone }: ShopDays, day: number, time: string): number {
  return Temporal.PlainDateTime.from(`${dates[day]}T${time}`).toZonedDateTime(timeZone).epochMilliseconds
}

/** Which day an instant falls on, and how late; instants before the first day count to the first. */
export function dayHourOf({ midnights, dates }: ShopDays, ms: number): DayHour {
  let day = Math.min(dates.length - 1, Math.max(0, Math.floor((ms - midnights[0]!) / 86_400_000)))
  while (day > 0 && ms < midnights[day]!) day--
  while (day < dates.length - 1 && ms >= midnights[day + 1]!) day++
  return { day, hours: (ms - midnights[day]!) / 3_600_000 }
}

/** An instant as people of the shop write it: local time with offset, whole seconds. */
export function instantText({ timeZone }: ShopDays, ms: number): string {
  return Temporal.Instant.fromEpochMilliseconds(ms)
    .toZonedDateTimeISO(timeZone)
    .toString({ timeZoneName: 'never', smallestUnit: 'second' })
}
