import type { OutboxView } from '../entry/outbox.ts'
import { stateOf, type Waiting } from '../entry/waiting.ts'
import type { Reach } from './reach.ts'

/** How this device stands towards the book. */
export interface Standing {
  view: OutboxView
  reach: Reach
  staysOffLine: boolean
}

/** What stands at the top of each page, and whether a person has to look at it. */
export interface QueueWords {
  words: string
  kind: 'calm' | 'do'
}

/** "all saved", or what is not: what asks for a person first. */
export function queueWords({ view, reach, staysOffLine }: Standing): QueueWords {
  const count = (state: string) => view.all.filter((one) => stateOf(one, view.sending) === state).length
  const [refused, sending] = [count('not-taken'), count('sending')]
  const waiting = count('waiting') + sending
  if (view.onPage.size > 0) return { words: `${view.onPage.size} in this page only`, kind: 'do' }
  if (refused > 0) return { words: `${refused} not taken`, kind: 'do' }
  if (staysOffLine) return { words: waiting > 0 ? `off line · ${waiting} wait` : 'off line', kind: 'do' }
  if (sending > 0 && reach.state === 'in-reach') return { words: `sending ${waiting}`, kind: 'calm' }
  if (waiting > 0) return { words: `${waiting} waiting`, kind: 'do' }
  return reach.state === 'in-reach' ? { words: 'all saved', kind: 'calm' } : { words: 'out of reach', kind: 'do' }
}

/** What is with one entry, in words. */
export function sayState(one: Waiting, { view, reach, staysOffLine }: Standing): string {
  const state = stateOf(one, view.sending)
  switch (state) {
    case 'taken':
      return 'in the book'
    case 'held':
      return `in the book, counts later: ${one.taken!.heldFor}`
    case 'not-taken':
      return 'not taken'
    case 'sending':
      return 'being sent'
    case 'waiting': {
      const where = view.onPage.has(one.entry.id) ? 'held by this open page only, ' : ''
      if (one.fault !== null) return `${where}waits: the server failed over it (${one.fault}) and is asked again`
      if (staysOffLine) return `${where}waits until you are on line again`
      return where + (reach.state === 'in-reach' ? 'waits' : 'waits until the book is in reach')
    }
  }
}

/** How this device stands towards the book, a sentence or two. */
export function sayStanding({ view, reach, staysOffLine }: Standing): string {
  const left = view.all.filter(({ taken }) => taken === null).length
  const waits = left === 0 ? 'Nothing waits.' : left === 1 ? 'One entry waits here.' : `${left} entries wait here.`
  if (staysOffLine)
    return `${waits} You keep this device off line: nothing is sent and nothing asked until you switch it back.`
  if (reach.state === 'out-of-reach') {
    const why = reach.said === null ? 'no answer from its server' : reach.said
    return `${waits} The book is out of reach: ${why}. It is tried again by itself.`
  }
  return left === 0 ? 'Everything written on this device is in the book.' : waits
}
