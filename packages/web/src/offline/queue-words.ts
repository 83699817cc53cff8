import { say } from '@sumpbook/fluid'
import type { OutboxView } from '../entry/outbox.ts'
import { stateOf, type Waiting } from '../entry/waiting.ts'
import { sayClock } from './clock.ts'
import type { Reach } from './reach.ts'

/** How this device stands towards the book. */
export interface Standing {
  view: OutboxView
  /** Pictures that entries name and the book does not have yet. */
  photos: number
  reach: Reach
  staysOffLine: boolean
  /** How far this device's clock is ahead of the book's, ms; null where nothing is known of it. */
  clockAhead: number | null
}

/** What stands at the top of each page, and whether a person has to look at it. */
export interface QueueWords {
  words: string
  kind: 'calm' | 'do'
}

/** "all saved", or what is not: what asks for a person first; a clock that is off only where nothing else does. */
export function queueWords({ view, photos, reach, staysOffLine, clockAhead }: Standing): QueueWords {
  const count = (state: string) => view.all.filter((one) => stateOf(one, view.sending) === state).length
  const [refused, sending] = [count('not-taken'), count('sending')]
  const waiting = count('waiting') + sending
  if (view.onPage.size > 0)
    return {
      words: say('{count, plural, one {# in this page only} other {# in this page only}}', { count: view.onPage.size }),
      kind: 'do',
    }
  if (refused > 0)
    return { words: say('{count, plural, one {# not taken} other {# not taken}}', { count: refused }), kind: 'do' }
  if (staysOffLine) {
    const words =
      waiting > 0
        ? say('{count, plural, one {off line · # wait} other {off line · # wait}}', { count: waiting })
        : say('off line')
    return { words, kind: 'do' }
  }
  if (sending > 0 && reach.state === 'in-reach')
    return { words: say('sending {count}', { count: waiting }), kind: 'calm' }
  if (waiting > 0)
    return { words: say('{count, plural, one {# waiting} other {# waiting}}', { count: waiting }), kind: 'do' }
  if (photos > 0)
    return {
      words: say('{count, plural, one {# photo waiting} other {# photos waiting}}', { count: photos }),
      kind: 'do',
    }
  if (reach.state !== 'in-reach') return { words: say('out of reach'), kind: 'do' }
  return sayClock(clockAhead) === ''
    ? { words: say('all saved'), kind: 'calm' }
    : { words: say('clock off'), kind: 'do' }
}

/** What is with one entry, in words. */
export function sayState(one: Waiting, { view, reach, staysOffLine }: Standing): string {
  const state = stateOf(one, view.sending)
  switch (state) {
    case 'taken':
      return say('in the book')
    case 'held':
      return say('in the book, counts later: {why}', { why: one.taken!.heldFor! })
    case 'not-taken':
      return say('not taken')
    case 'sending':
      return say('being sent')
    case 'waiting': {
      const waits = sayWaits(one, { reach, staysOffLine })
      return view.onPage.has(one.entry.id) ? say('held by this open page only, {waits}', { waits }) : waits
    }
  }
}

function sayWaits({ fault }: Waiting, { reach, staysOffLine }: Pick<Standing, 'reach' | 'staysOffLine'>): string {
  if (fault !== null) return say('waits: the server failed over it ({fault}) and is asked again', { fault })
  if (staysOffLine) return say('waits until you are on line again')
  return reach.state === 'in-reach' ? say('waits') : say('waits until the book is in reach')
}

/** How this device stands towards the book, a sentence or two; of photos it is said apart. */
export function sayStanding({ view, photos, reach, staysOffLine }: Standing): string {
  const left = view.all.filter(({ taken }) => taken === null).length
  const waits =
    left === 0
      ? photos === 0
        ? say('Nothing waits.')
        : say('No entry waits.')
      : say('{count, plural, one {One entry waits here.} other {# entries wait here.}}', { count: left })
  if (staysOffLine) {
    const kept = say('You keep this device off line: nothing is sent and nothing asked until you switch it back.')
    return `${waits} ${kept}`
  }
  if (reach.state === 'out-of-reach') {
    const why = reach.said === null ? say('no answer from its server') : reach.said
    return `${waits} ${say('The book is out of reach: {why}. It is tried again by itself.', { why })}`
  }
  if (left > 0) return waits
  return photos === 0 ? say('Everything written on this device is in the book.') : waits
}

/** What becomes of photos that entries name and the book does not have yet; empty where none waits. */
export function sayPhotos({ photos, staysOffLine }: Pick<Standing, 'photos' | 'staysOffLine'>): string {
  if (photos === 0) return ''
  return staysOffLine
    ? say(
        '{count, plural, one {One photo waits here. It is sent once you are on line again, and leaves this device only after that.} other {# photos wait here. They are sent once you are on line again, and leave this device only after that.}}',
        { count: photos },
      )
    : say(
        '{count, plural, one {One photo waits here. It is sent by itself once the book is in reach, and leaves this device only after that.} other {# photos wait here. They are sent by themselves once the book is in reach, and leave this device only after that.}}',
        { count: photos },
      )
}
