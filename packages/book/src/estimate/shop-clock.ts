import type { ShopTime } from '@sumpbook/fluid'
import { Temporal } from 'temporal-polyfill'

export const dayMs = 86_400_000

/** The shop's own clock beside UTC. */
export interface ShopClock {
  /**
   * Whole calendar days since 1970-01-01 in the shop's zone, and the fraction of the day its clock shows. Never runs back: in the
   * hour that comes twice in autumn it waits until its clock has caught up, so that the order of instants stays.
   *
   * @param ms milliseconds since 1970-01-01 UTC
   */
  at(ms: number): ShopTime
  /** The instant at which the clock shows a time, in milliseconds since 1970-01-01 UTC; the first of two. */
  instantOf(at: ShopTime): number
}

/** A time in which the zone's clock keeps one distance from UTC. */
interface Stretch {
  from: number
  until: number
  offset: number
  /** What the clock had come to before it. */
  least: ShopTime
}

/**
 * A clock that asks the calendar once for each stretch between two changes of the zone's offset, not once for each entry.
 *
 * @param timeZone of the IANA list
 */
export function shopClock(timeZone: string): ShopClock {
  const known: Stretch[] = []
  let last: Stretch = { from: 0, until: 0, offset: 0, least: 0 }
  const stretchAt = (ms: number): Stretch => {
    if (ms >= last.from && ms < last.until) return last
    let found = known.find(({ from, until }) => ms >= from && ms < until)
    if (found === undefined) {
      found = stretchOf(ms, timeZone)
      known.push(found)
    }
    last = found
    return found
  }
  return {
    at: (ms) => {
      const { offset, least } = stretchAt(ms)
      return Math.max((ms + offset) / dayMs, least)
    },
    instantOf: (at) => {
      const local = Math.round(at * dayMs)
      const early = local - stretchAt(local - dayMs).offset
      if (stretchAt(early).offset === local - early) return early
      return local - stretchAt(local - stretchAt(early).offset).offset
    },
  }
}

function stretchOf(ms: number, timeZone: string): Stretch {
  const moment = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone)
  const next = moment.getTimeZoneTransition('next')
  const until = next === null ? Number.POSITIVE_INFINITY : next.epochMilliseconds
  const began = Temporal.Instant.fromEpochMilliseconds(ms + 1)
    .toZonedDateTimeISO(timeZone)
    .getTimeZoneTransition('previous')
  const offset = offsetMs(moment)
  if (began === null) return { from: Number.NEGATIVE_INFINITY, until, offset, least: Number.NEGATIVE_INFINITY }
  const from = began.epochMilliseconds
  const before = Temporal.Instant.fromEpochMilliseconds(from - 1).toZonedDateTimeISO(timeZone)
  return { from, until, offset, least: (from + offsetMs(before)) / dayMs }
}

const offsetMs = ({ offsetNanoseconds }: Temporal.ZonedDateTime) => Math.round(offsetNanoseconds / 1e6)

/** A day as text, `2026-03-03`. */
export const dayText = (day: number): string => new Date(day * dayMs).toISOString().slice(0, 10)

/** A day given as text, as whole days since 1970-01-01. */
export const dayNumber = (text: string): number => Math.floor(Date.parse(`${text}T00:00:00Z`) / dayMs)
