import type { WorkCalendar } from '@sumpbook/fluid'
import type { Things } from '../setup/things.ts'
import { dayNumber } from './shop-clock.ts'

/** Where nobody said: Monday to Friday. */
const usualWorkDays = [1, 2, 3, 4, 5]

/** The days on which the shop works. */
export const workCalendarOf = ({ shop: { workDays, shutdowns = [] } }: Things): WorkCalendar => ({
  workDays: [...new Set(workDays ?? usualWorkDays)].sort((a, b) => a - b),
  shutdowns: shutdowns.map(({ from, to }) => ({ from: dayNumber(from), to: dayNumber(to) })),
})
