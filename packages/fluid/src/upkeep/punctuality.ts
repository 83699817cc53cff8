import { trendOf } from '../control/trend.ts'
import type { WorkCalendar } from '../estimate/events.ts'
import { median } from '../statistics/median.ts'
import { dueDay } from './due-day.ts'

/** How a task was kept. */
export interface Punctuality {
  /** Times it was done again after a first one. */
  times: number
  /** Of these, done after the day it was due. */
  late: number
  /** The median of days after the day it was due, negative where earlier; null without a time. */
  medianDaysLate: number | null
  /** Whether it comes later each time, beyond what chance makes of it (one in twenty); null with fewer than five times. */
  slipping: boolean | null
}

/** Fewer times than this show no trend. */
const leastForTrend = 5

/**
 * How far a task was done from the day it was due, and whether it slips: the trend of Mann and Kendall over its times.
 *
 * @param days on which it was done, in any order; two of one day count once
 */
export function punctuality(days: readonly number[], everyDays: number, calendar: WorkCalendar): Punctuality {
  const done = [...new Set(days)].sort((a, b) => a - b)
  const late = done.slice(1).map((day, i) => day - dueDay({ lastOn: done[i]!, everyDays, from: done[i]! }, calendar))
  if (late.length === 0) return { times: 0, late: 0, medianDaysLate: null, slipping: null }
  const trend = late.length < leastForTrend ? null : trendOf(late.map((value, at) => ({ at, value })))
  return {
    times: late.length,
    late: late.filter((value) => value > 0).length,
    medianDaysLate: median(late),
    slipping: trend === null ? null : trend.direction === 'rising',
  }
}
