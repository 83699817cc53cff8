import type { ShopTime } from '@sumpbook/fluid'
import { stretchAt } from '../journal/zone-offset.ts'

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

/**
 * A clock that asks the calendar once for each stretch between two changes of the zone's offset, not once for each entry.
 *
 * @param timeZone of the IANA list
 */
export function shopClock(timeZone: string): ShopClock {
  const offsetAt = (ms: number) => stretchAt(timeZone, ms).offset
  return {
    at: (ms) => {
      const { from, offset, offsetBefore } = stretchAt(timeZone, ms)
      return Math.max((ms + offset) / dayMs, (from + offsetBefore) / dayMs)
    },
    instantOf: (at) => {
      const local = Math.round(at * dayMs)
      const early = local - offsetAt(local - dayMs)
      if (offsetAt(early) === local - early) return early
      return local - offsetAt(local - offsetAt(early))
    },
  }
}

/** A day as text, `2026-03-03`. */
export const dayText = (day: number): string => new Date(day * dayMs).toISOString().slice(0, 10)

/** A day given as text, as whole days since 1970-01-01. */
export const dayNumber = (text: string): number => Math.floor(Date.parse(`${text}T00:00:00Z`) / dayMs)
