import type { WorkCalendar } from '@sumpbook/fluid'
import { dayMs, type ShopClock } from '../estimate/shop-clock.ts'
import { workCalendarOf } from '../estimate/work-calendar.ts'
import type { Things } from '../setup/things.ts'

/** One shift a day where nobody said (common practice, no source). */
const usualShifts = ['06:00']
/** A shop that closes for longer than this has shifts as if it worked every day. */
const farthestDays = 400

/** The shift of an instant and those before it, by when they began. */
export interface Shifts {
  /** Milliseconds since 1970-01-01 UTC, youngest first: the shift that runs, the one before it, and so on. */
  began: number[]
  /** When the next one begins. */
  endsAt: number
}

/**
 * The shifts around an instant. Shifts begin on working days: what lies between the last shift before a weekend and the first
 * after it belongs to that last one, so that nobody who was away has had his turn.
 *
 * @param back how many shifts before the one that runs
 */
export function shiftsAt(
  ms: number,
  { clock, things, back }: { clock: ShopClock; things: Things; back: number },
): Shifts {
  const calendar = workCalendarOf(things)
  const hours = (things.shop.shifts ?? usualShifts).map(dayShareOf).sort((a, b) => a - b)
  const today = Math.floor(clock.at(ms))
  const isAny = hasWorkDay(calendar, today)
  const beginsOn = (day: number) =>
    isAny && !isWorkDay(calendar, day) ? [] : hours.map((hour) => clock.instantOf(day + hour))
  const began: number[] = []
  for (let day = today; began.length <= back && day > today - farthestDays; day--) {
    began.push(
      ...beginsOn(day)
        .filter((start) => start <= ms)
        .reverse(),
    )
  }
  let endsAt: number | undefined
  for (let day = today; endsAt === undefined && day < today + farthestDays; day++) {
    endsAt = beginsOn(day).find((start) => start > ms)
  }
  return { began: began.slice(0, back + 1), endsAt: endsAt ?? ms + dayMs }
}

function dayShareOf(time: string): number {
  const [hours, minutes] = time.split(':').map(Number)
  return (hours! * 60 + minutes!) / (24 * 60)
}

/** 1970-01-01 was a Thursday; ISO days begin with Monday, 1. */
const isoDayOf = (day: number) => ((((day + 3) % 7) + 7) % 7) + 1

const isWorkDay = ({ workDays, shutdowns }: WorkCalendar, day: number) =>
  workDays.includes(isoDayOf(day)) && !shutdowns.some(({ from, to }) => day >= from && day <= to)

function hasWorkDay(calendar: WorkCalendar, today: number): boolean {
  const near = Array.from({ length: 60 }, (_, n) => today - n)
  return near.some((day) => isWorkDay(calendar, day))
}
