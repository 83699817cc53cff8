import type { Chance } from './random.ts'

/** The simulation goes by half hours from a Monday's midnight in the shop's zone. */
export const stepsPerDay = 48
export const stepMs = 1_800_000
export const dayMs = 86_400_000
/** A half year, and four weeks more for what would have come of it. */
export const weeks = 26
export const bookDays = weeks * 7
export const truthDays = bookDays + 28
export const truthSteps = truthDays * stepsPerDay

/** When a shop works, in its own days from 0. */
export interface ShopClock {
  /** The instant of step 0. */
  startMs: number
  timeZone: string
  /** ISO days of the week. */
  workDays: number[]
  /** Hours of the day between which machines run. */
  opens: number
  closes: number
  /** First and last day of each, both included. */
  shutdowns: { from: number; to: number }[]
}

const zones = [
  { timeZone: 'UTC', hours: 0 },
  { timeZone: 'Etc/GMT-1', hours: 1 },
  { timeZone: 'Etc/GMT+6', hours: -6 },
  { timeZone: 'Etc/GMT-9', hours: 9 },
]

export function drawClock(chance: Chance): ShopClock {
  const { timeZone, hours } = chance.pick(zones)
  const monday = Date.UTC(2025, 0, 6) + Math.floor(chance.between(0, 52)) * 7 * dayMs
  const [opens, closes] = chance.pick([
    [6, 14],
    [6, 22],
    [6, 22],
    [0, 24],
  ])
  const away = Math.floor(chance.between(20, bookDays - 20))
  return {
    startMs: monday - hours * 3_600_000,
    timeZone,
    workDays: chance.pick([
      [1, 2, 3, 4, 5],
      [1, 2, 3, 4, 5],
      [1, 2, 3, 4, 5, 6],
    ]),
    opens: opens!,
    closes: closes!,
    shutdowns: chance.happens(0.6) ? [{ from: away, to: away + Math.floor(chance.between(3, 14)) }] : [],
  }
}

export const instantOf = (clock: ShopClock, step: number): number => clock.startMs + step * stepMs
export const stepOf = (clock: ShopClock, ms: number): number => Math.floor((ms - clock.startMs) / stepMs)

/** The day as the shop's calendar writes it. */
export function dateOf({ startMs, timeZone }: ShopClock, day: number): string {
  const noon = new Date(startMs + day * dayMs + dayMs / 2)
  return new Intl.DateTimeFormat('sv-SE', { timeZone }).format(noon)
}

export const isWorkDay = ({ workDays, shutdowns }: ShopClock, day: number): boolean =>
  workDays.includes((day % 7) + 1) && !shutdowns.some(({ from, to }) => day >= from && day <= to)

export const isShutdown = ({ shutdowns }: ShopClock, day: number): boolean =>
  shutdowns.some(({ from, to }) => day >= from && day <= to)
