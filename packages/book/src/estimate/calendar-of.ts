import type { ThingHistory } from '../setup/things.ts'
import { shopClock } from './shop-clock.ts'
import { workCalendarOf } from './work-calendar.ts'

const clocks = new WeakMap<ThingHistory, ReturnType<typeof shopClock>>()

/** The shop's clock and working days, as they are after every change: there is one calendar for the whole book. */
export function calendarOf(history: ThingHistory) {
  const present = history.at()
  const clock = clocks.get(history) ?? shopClock(present.shop.timeZone)
  clocks.set(history, clock)
  return { clock, calendar: workCalendarOf(present) }
}
