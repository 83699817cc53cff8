import type { Chance } from '../simulate/random.ts'

/** This world goes by whole hours from a Monday's midnight in the shop's zone. */
export const hourMs = 3_600_000
export const dayMs = 24 * hourMs
export const bookDays = 26 * 7
/** Four weeks more, for what would have come of the last day. */
export const truthHours = (bookDays + 28) * 24

export type DayKind = 'work' | 'rest' | 'shutdown'

export interface Calendar {
  startMs: number
  timeZone: string
  /** ISO days of the week. */
  workDays: number[]
  shift: { from: number; to: number }
  /** First and last day of each, both included, as they are hung up in the shop. */
  shutdowns: { from: number; to: number }[]
  /** What each day really was: days off and worked Saturdays that no calendar shows included. */
  days: DayKind[]
}

/** Zones without summer time, so that an hour of the day stays where it is. */
const zones = [
  { timeZone: 'Asia/Kolkata', minutes: 330 },
  { timeZone: 'America/Phoenix', minutes: -420 },
  { timeZone: 'Africa/Lagos', minutes: 60 },
  { timeZone: 'Australia/Brisbane', minutes: 600 },
]

export function drawCalendar(chance: Chance): Calendar {
  const { timeZone, minutes } = chance.pick(zones)
  const monday = Date.UTC(2024, 0, 1) + 7 * dayMs * Math.floor(chance.between(0, 80))
  const week = chance.happens(0.8) ? 5 : 6
  const shutdowns = chance.happens(0.5) ? [spell(chance, 6, 12)] : []
  return {
    startMs: monday - minutes * 60_000,
    timeZone,
    workDays: Array.from({ length: week }, (_, i) => i + 1),
    shift: chance.pick([
      { from: 7, to: 16 },
      { from: 6, to: 22 },
    ]),
    shutdowns,
    days: Array.from({ length: truthHours / 24 }, (_, day): DayKind => {
      if (shutdowns.some(({ from, to }) => day >= from && day <= to)) return 'shutdown'
      if (day % 7 < week) return chance.happens(1 / 90) ? 'rest' : 'work'
      return day % 7 === 5 && chance.happens(1 / 12) ? 'work' : 'rest'
    }),
  }
}

/** A spell of whole days somewhere in the half year. */
export function spell(chance: Chance, shortest: number, longest: number): { from: number; to: number } {
  const from = Math.floor(chance.between(21, bookDays - longest))
  return { from, to: from - 1 + Math.round(chance.between(shortest, longest)) }
}

export const hourStart = ({ startMs }: Calendar, hour: number): number => startMs + hour * hourMs

/** The date that the shop writes. */
export const writtenDate = ({ startMs, timeZone }: Calendar, day: number): string =>
  new Intl.DateTimeFormat('en-CA', { timeZone }).format(startMs + (day + 0.5) * dayMs)

export const inShift = ({ shift }: Calendar, hour: number): boolean => hour % 24 >= shift.from && hour % 24 < shift.to
