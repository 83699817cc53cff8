import type { ShopTime, WorkCalendar } from './events.ts'

/** A time without work of one machine. */
export interface Idle {
  from: ShopTime
  until: ShopTime
}

/** 1970-01-01 was a Thursday, ISO day 4. */
const isoDay = (day: number) => ((((day + 3) % 7) + 7) % 7) + 1

/**
 * Days of work between two times, parts of days in proportion; the shop's days off and shutdowns do not count, nor do the
 * machine's own idle times. Negative where `until` comes first.
 */
export function workBetween(
  calendar: WorkCalendar,
  from: ShopTime,
  until: ShopTime,
  idles: readonly Idle[] = [],
): number {
  let work = workUntil(calendar, until) - workUntil(calendar, from)
  for (const idle of idles) {
    const [a, b] = [Math.max(from, idle.from), Math.min(until, idle.until)]
    if (b > a) work -= workUntil(calendar, b) - workUntil(calendar, a)
  }
  return Math.max(work, 0)
}

/** Days of work since day 0. */
function workUntil({ workDays, shutdowns }: WorkCalendar, at: ShopTime): number {
  const day = Math.floor(at)
  let work = weekdaysBefore(workDays, day)
  let open = workDays.includes(isoDay(day))
  for (const { from, to } of shutdowns) {
    if (day < from) continue
    work -= weekdaysBefore(workDays, Math.min(day, to + 1)) - weekdaysBefore(workDays, from)
    if (day <= to) open = false
  }
  return open ? work + (at - day) : work
}

function weekdaysBefore(workDays: readonly number[], day: number): number {
  const weeks = Math.floor(day / 7)
  return weeks * workDays.length + daysOfWeek(workDays)[day - weeks * 7]!
}

/** Days of work among the first of a week that begins on a Thursday, for each number of days: looked up thousands of times. */
function daysOfWeek(workDays: readonly number[]): readonly number[] {
  const known = weeksKnown.get(workDays)
  if (known !== undefined) return known
  const counts = [0]
  for (let day = 0; day < 7; day++) counts.push(counts[day]! + (workDays.includes(isoDay(day)) ? 1 : 0))
  weeksKnown.set(workDays, counts)
  return counts
}

const weeksKnown = new WeakMap<readonly number[], readonly number[]>()
