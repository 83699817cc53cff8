import { Temporal } from 'temporal-polyfill'
import { lastDay, type ShopDays } from './shop-days.ts'

/** Both days included. */
export interface Shutdown {
  from: string
  to: string
}

/** On which days the shop works. */
export interface Calendar {
  /** By day of the simulation. */
  open: readonly boolean[]
  shutdowns: Shutdown[]
}

/** Days before the last on which the shop is never shut down, so that the last days have something to tell. */
const quietDays = 28

/**
 * Mondays to Fridays, without public holidays and shutdowns. The last two days are worked whatever they are:
 * somebody opens the example on a Sunday too.
 */
export function calendarOf(days: ShopDays): Calendar {
  const shutdowns = shutdownsOf(days)
  const last = lastDay(days)
  const open = days.dates.map((date, day) => {
    if (day >= last - 1) return true
    if (days.weekdays[day]! > 5 || isPublicHoliday(date)) return false
    return !shutdowns.some(({ from, to }) => from <= date && date <= to)
  })
  return { open, shutdowns }
}

/** A fortnight in August and the turn of the year, where they fit; else a week four months before the end. */
function shutdownsOf({ dates }: ShopDays): Shutdown[] {
  const last = dates.length - 1
  const years = [...new Set(dates.map((date) => Number(date.slice(0, 4))))]
  const usual = years.flatMap((year) => [summer(year), { from: `${year}-12-24`, to: `${year + 1}-01-01` }])
  const fitting = usual.filter(({ from, to }) => from > dates[14]! && to < dates[last - quietDays]!)
  if (fitting.length > 0) return fitting
  const monday = Temporal.PlainDate.from(dates[last - 120]!)
  const from = monday.subtract({ days: monday.dayOfWeek - 1 })
  return [{ from: String(from), to: String(from.add({ days: 6 })) }]
}

/** Two weeks from the first Monday of August. */
function summer(year: number): Shutdown {
  const first = Temporal.PlainDate.from({ year, month: 8, day: 1 })
  const from = first.add({ days: (8 - first.dayOfWeek) % 7 })
  return { from: String(from), to: String(from.add({ days: 13 })) }
}

/** Holidays common to all German states. */
export function isPublicHoliday(date: string): boolean {
  const year = Number(date.slice(0, 4))
  if (['01-01', '05-01', '10-03', '12-25', '12-26'].includes(date.slice(5))) return true
  const easter = Temporal.PlainDate.from(easterSunday(year))
  return [-2, 1, 39, 50].some((days) => String(easter.add({ days })) === date)
}

/** Easter Sunday by the anonymous Gregorian computus (J. Meeus, "Astronomical Algorithms", chapter 8). */
export function easterSunday(year: number): string {
  const whole = (x: number, by: number) => Math.floor(x / by)
  const a = year % 19
  const b = whole(year, 100)
  const c = year % 100
  const g = whole(8 * b + 13, 25)
  const h = (19 * a + b - whole(b, 4) - g + 15) % 30
  const l = (32 + 2 * (b % 4) + 2 * whole(c, 4) - h - (c % 4)) % 7
  const m = whole(a + 11 * h + 19 * l, 433)
  const month = whole(h + l - 7 * m + 90, 25)
  const day = (h + l - 7 * m + 33 * month + 19) % 32
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}
