import type { WorkCalendar } from '../estimate/events.ts'
import type { Days } from '../quantities.ts'
import { requireRange } from '../require.ts'

export interface TestDayQuestion {
  /** The day of the last one, whole days since 1970-01-01; null where there was none. */
  last: number | null
  everyDays: Days
  today: number
}

/**
 * The day on which a test is due: `last + everyDays`, or the working day before it where nobody works on that day, so that the interval is
 * never longer than asked for. Where there is no working day in between (a daily test over a weekend), the next working day. Without any
 * test before, today.
 *
 * @throws {RangeError} an interval under one day, a day that is no whole number
 * @example testDay({ last: 20515, everyDays: 7, today: 20516 }, { workDays: [1, 2, 3, 4, 5], shutdowns: [] }) // 20522: Tuesday to Tuesday
 */
export function testDay({ last, everyDays, today }: TestDayQuestion, calendar: WorkCalendar): number {
  requireRange('everyDays', everyDays, { min: 1, max: 3660 })
  requireRange('today', today, {})
  if (last === null) return today
  requireRange('last', last, {})
  const day = last + Math.floor(everyDays)
  for (let before = day; before > last; before -= 1) if (isWorkDay(before, calendar)) return before
  for (let after = day + 1; after <= day + longestClosed; after += 1) if (isWorkDay(after, calendar)) return after
  return day
}

/** Days within which even a closed shop opens again; one that never works has its tests on the day itself. */
const longestClosed = 400

/** 1970-01-01 was a Thursday, the fourth day of an ISO week. */
function isWorkDay(day: number, { workDays, shutdowns }: WorkCalendar): boolean {
  const weekday = ((((day + 3) % 7) + 7) % 7) + 1
  return workDays.includes(weekday) && !shutdowns.some(({ from, to }) => day >= from && day <= to)
}
