import type { BenchBook, BenchEntry } from '../book.ts'

const dayMs = 86_400_000

/** The part of a running day's losses that one day has. */
export interface DayShare {
  evaporation: number
  carryOff: number
}

const working: DayShare = { evaporation: 1, carryOff: 1 }
const standing: DayShare = { evaporation: 0.3, carryOff: 0 }

/** Which days count as running, by the shop's calendar and the sump's `idle` entries. */
export interface WorkDays {
  /** Minutes by which the shop's clock is ahead of UTC. */
  offsetMs: number
  share(day: number): DayShare
}

/** The zone is taken with the offset it has at `atMs`. */
export function workDaysOf({ shop }: BenchBook, idles: readonly BenchEntry[], atMs: number): WorkDays {
  const offsetMs = offsetOf(shop.timeZone, atMs)
  const shutdowns = shop.shutdowns.map(({ from, to }) => [Date.parse(from) / dayMs, Date.parse(to) / dayMs] as const)
  const spells = idles.map(({ from, to }) => [Date.parse(from!), Date.parse(to as string)] as const)
  return {
    offsetMs,
    share(day) {
      // 1 January 1970, day 0, was a Thursday.
      const weekday = ((((day + 3) % 7) + 7) % 7) + 1
      const noon = (day + 0.5) * dayMs - offsetMs
      const rests =
        !shop.workDays.includes(weekday) ||
        shutdowns.some(([from, to]) => day >= from && day <= to) ||
        spells.some(([from, to]) => noon >= from && noon <= to)
      return rests ? standing : working
    },
  }
}

function offsetOf(timeZone: string, ms: number): number {
  const text = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' }).format(ms)
  return Date.parse(`${text.replace(' ', 'T')}Z`) - Math.floor(ms / 1000) * 1000
}

/** The stretches of calendar days between two instants, each with its length in days. */
export function* stretches({ offsetMs }: WorkDays, fromMs: number, toMs: number) {
  let ms = fromMs
  while (ms < toMs) {
    const day = Math.floor((ms + offsetMs) / dayMs)
    const end = Math.min((day + 1) * dayMs - offsetMs, toMs)
    yield { day, fromMs: ms, toMs: end, days: (end - ms) / dayMs }
    ms = end
  }
}
