import { type ClockSeen, clockAheadOf } from './clock.ts'
import { observed } from './observed.ts'

/** Whether the book answers just now, as the last request found. */
export type Reach = { state: 'in-reach' } | { state: 'out-of-reach'; said: string | null }

const inReach: Reach = { state: 'in-reach' }
export const reach = observed<Reach>(inReach)
/** How far this device's clock is ahead of the book's, ms; null until an answer told. */
export const clockAhead = observed<number | null>(null)

export function answered(seen: ClockSeen): void {
  reach.set(inReach)
  const ahead = clockAheadOf(seen)
  if (ahead !== null) clockAhead.set(ahead)
}

/** @param said what something between here and the book, or the book's own server, said instead of an answer */
export function gotNoAnswer(said: string | null): void {
  const before = reach.now()
  if (before.state === 'out-of-reach' && before.said === said) return
  reach.set({ state: 'out-of-reach', said })
}

const key = 'sumpbook.stay-off-line'

/** Whether the person keeps this device off line: nothing is sent and nothing asked until it is switched back. */
export const staysOffLine = observed(load())

export function stayOffLine(stays: boolean): void {
  staysOffLine.set(stays)
  try {
    if (stays) localStorage.setItem(key, 'yes')
    else localStorage.removeItem(key)
  } catch {
    // Storage is forbidden or full: it holds as long as the page is open.
  }
}

/** Another open page of this device switched it. */
export function watchOtherPages(): void {
  addEventListener('storage', (event) => {
    if (event.key === key) staysOffLine.set(event.newValue !== null)
  })
}

function load(): boolean {
  try {
    return localStorage.getItem(key) !== null
  } catch {
    return false
  }
}
