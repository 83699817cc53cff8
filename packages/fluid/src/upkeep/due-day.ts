import type { WorkCalendar } from '../estimate/events.ts'
import { workBetween } from '../estimate/work-calendar.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A task that comes back. Days count from 1970-01-01, in the shop's zone. */
export interface Recurring {
  /** The day it was done last; null where it never was. */
  lastOn: number | null
  /** Calendar days from one time to the next, a whole number above 0. */
  everyDays: number
  /** The day from which it is asked for. */
  from: number
}

/**
 * The working day on which a task is due. Where its day falls on one without work, the last working day before it is taken: an interval may
 * shorten, never lengthen. Where no working day lies between the last time and that day (a shutdown), it is due on the first one after.
 *
 *     due = last working day in (lastOn, lastOn + everyDays], else the first after
 *
 * A task that was never done is due on the first working day from `from` on.
 *
 * Source: calendar arithmetic.
 *
 * @throws {RangeError} an interval that is no whole number of days above 0, a calendar without a working day
 * @example dueDay({ lastOn: 4, everyDays: 7, from: 0 }, { workDays: [1, 2, 3, 4, 5], shutdowns: [] }) // 11: Monday to Monday
 */
export function dueDay({ lastOn, everyDays, from }: Recurring, calendar: WorkCalendar): number {
  requireRange('everyDays', everyDays, { min: 1, max: 4000 })
  if (!Number.isInteger(everyDays)) throw new OutOfRange('everyDays', everyDays, 'a whole number')
  if (calendar.workDays.length === 0) throw new OutOfRange('workDays', 0, 'at least one working day in a week')
  if (lastOn === null) return firstWorkDay(from, calendar)
  for (let day = lastOn + everyDays; day > lastOn; day -= 1) if (isWorkDay(day, calendar)) return day
  return firstWorkDay(lastOn + everyDays + 1, calendar)
}

/** The first working day from a day on, that day included. A shutdown of more than four years is none. */
export function firstWorkDay(from: number, calendar: WorkCalendar): number {
  for (let day = from; day < from + 1500; day += 1) if (isWorkDay(day, calendar)) return day
  return from
}

const isWorkDay = (day: number, calendar: WorkCalendar) => workBetween(calendar, day, day + 1) > 0
