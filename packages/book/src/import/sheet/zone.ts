import { Temporal } from 'temporal-polyfill'
import type { WallTime } from './dates.ts'

/** An instant, and whether the wall's clock showed that time twice or never on that day. */
export interface ZonedInstant {
  /** RFC 3339, UTC, fixed width: the order of the text is the order of time. */
  at: string
  shift: 'twice' | 'never' | null
}

/** Turns days and times on the wall of the shop into instants. */
export interface ZoneClock {
  instantOf(wall: WallTime): ZonedInstant
}

/** A reading without a time of day is taken as of noon. */
const noon = { hour: 12, minute: 0, second: 0 }

/**
 * The clock of a time zone of the IANA list. A time that came twice is taken as the first of the two, one that never came as
 * if the clock had not been put forward yet (Temporal's "compatible").
 */
export function zoneClock(timeZone: string): ZoneClock {
  const offsets = new Map<number, number | null>()
  return {
    instantOf: ({ year, month, day, clock }) => {
      const { hour, minute, second } = clock ?? noon
      const midnight = Date.UTC(year, month - 1, day)
      if (!offsets.has(midnight)) offsets.set(midnight, steadyOffset(timeZone, { year, month, day }))
      const offset = offsets.get(midnight) ?? null
      if (offset === null) return atChange(timeZone, { year, month, day, hour, minute, second })
      const milliseconds = midnight + ((hour * 60 + minute) * 60 + second) * 1000 - offset
      return { at: new Date(milliseconds).toISOString(), shift: null }
    },
  }
}

/** Milliseconds east of UTC, where they stay the same all day; null where the clocks change. */
function steadyOffset(timeZone: string, day: { year: number; month: number; day: number }): number | null {
  const start = Temporal.PlainDate.from(day).toZonedDateTime(timeZone)
  const end = start.add({ days: 1 })
  return start.offsetNanoseconds === end.offsetNanoseconds && start.hour === 0 ? start.offsetNanoseconds / 1e6 : null
}

function atChange(
  timeZone: string,
  fields: { year: number; month: number; day: number; hour: number; minute: number; second: number },
): ZonedInstant {
  const wall = Temporal.PlainDateTime.from(fields)
  const earlier = wall.toZonedDateTime(timeZone, { disambiguation: 'earlier' })
  const later = wall.toZonedDateTime(timeZone, { disambiguation: 'later' })
  const meant = wall.toZonedDateTime(timeZone, { disambiguation: 'compatible' })
  const at = new Date(meant.epochMilliseconds).toISOString()
  if (earlier.epochMilliseconds === later.epochMilliseconds) return { at, shift: null }
  return { at, shift: earlier.toPlainDateTime().equals(wall) ? 'twice' : 'never' }
}
