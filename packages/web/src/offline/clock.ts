import { say } from '@sumpbook/fluid'
/** One request: this device's clock before and after it, and what the server's clock said meanwhile (its `Date`, whole seconds). */
export interface ClockSeen {
  sentAt: number
  answeredAt: number
  /** The `Date` of the answer; null where none came. */
  date: string | null
}

/** An answer that took longer than this says too little of a clock. */
const slowestMs = 10_000
/** Under this no person needs to do anything: what the network takes and what two good clocks differ by. */
export const worthSayingMs = 3 * 60_000

/**
 * How far this device's clock is ahead of the server's, ms; negative where it is behind, null where the answer does not tell.
 * The server's second is taken at its middle and the answer's way as half of the time that the whole took:
 *
 *     ahead = (sentAt + answeredAt) / 2 − (date + 500)
 *
 * It errs by at most half the request's time and half a second.
 */
export function clockAheadOf({ sentAt, answeredAt, date }: ClockSeen): number | null {
  const server = date === null ? Number.NaN : Date.parse(date)
  const took = answeredAt - sentAt
  if (Number.isNaN(server) || took < 0 || took > slowestMs) return null
  return Math.round((sentAt + answeredAt) / 2 - (server + 500))
}

/** What a person is told of it; empty where the clock is right enough. */
export function sayClock(aheadMs: number | null): string {
  if (aheadMs === null || Math.abs(aheadMs) < worthSayingMs) return ''
  const length = sayLength(Math.abs(aheadMs))
  return aheadMs > 0
    ? say(
        'This device’s clock is {length} fast, going by the book’s. Entries are taken all the same, and the book notes by how much it was off. Set the clock right.',
        { length },
      )
    : say(
        'This device’s clock is {length} slow, going by the book’s. Entries are taken all the same, and the book notes by how much it was off. Set the clock right.',
        { length },
      )
}

function sayLength(ms: number): string {
  const minutes = Math.round(ms / 60_000)
  if (minutes < 120) return say('{count, plural, one {# minute} other {# minutes}}', { count: minutes })
  const hours = Math.round(minutes / 60)
  return hours < 48
    ? say('{count, plural, one {# hour} other {# hours}}', { count: hours })
    : say('{count, plural, one {# day} other {# days}}', { count: Math.round(hours / 24) })
}
