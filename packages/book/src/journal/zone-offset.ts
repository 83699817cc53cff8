import { Temporal } from 'temporal-polyfill'

/** A time in which the clock of a zone keeps one distance from UTC. Milliseconds since 1970-01-01 UTC. */
export interface Stretch {
  from: number
  until: number
  /** Milliseconds that the zone's clock is ahead. */
  offset: number
  /** The distance it kept before. */
  offsetBefore: number
}

/** What is known of each zone: it is asked for once for each stretch, not once for each entry. Rules of zones do not change while a program runs. */
const known = new Map<string, { last: Stretch; all: Stretch[] }>()

/**
 * How far a zone's clock is from UTC at an instant, and how long it stays so.
 *
 * @param timeZone of the IANA list
 */
export function stretchAt(timeZone: string, ms: number): Stretch {
  const zone = known.get(timeZone)
  if (zone !== undefined && ms >= zone.last.from && ms < zone.last.until) return zone.last
  const all = zone?.all ?? []
  let found = all.find(({ from, until }) => ms >= from && ms < until)
  if (found === undefined) {
    found = stretchOf(ms, timeZone)
    all.push(found)
  }
  known.set(timeZone, { last: found, all })
  return found
}

function stretchOf(ms: number, timeZone: string): Stretch {
  const moment = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone)
  const next = moment.getTimeZoneTransition('next')
  const until = next === null ? Number.POSITIVE_INFINITY : next.epochMilliseconds
  const began = Temporal.Instant.fromEpochMilliseconds(ms + 1)
    .toZonedDateTimeISO(timeZone)
    .getTimeZoneTransition('previous')
  const offset = offsetMs(moment)
  if (began === null) return { from: Number.NEGATIVE_INFINITY, until, offset, offsetBefore: offset }
  const from = began.epochMilliseconds
  const before = Temporal.Instant.fromEpochMilliseconds(from - 1).toZonedDateTimeISO(timeZone)
  return { from, until, offset, offsetBefore: offsetMs(before) }
}

const offsetMs = ({ offsetNanoseconds }: Temporal.ZonedDateTime) => Math.round(offsetNanoseconds / 1e6)
