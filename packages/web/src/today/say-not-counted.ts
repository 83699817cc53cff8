import { say } from '@sumpbook/fluid'
import { isOnDevice } from '../entry/waiting.ts'
import type { Standing } from '../offline/queue-words.ts'

/** How many entries of this device the day's first sentence and the cart leave out; empty where none, and for the moment of sending. */
export function sayNotCounted({ view, reach, staysOffLine }: Standing): string {
  const count = view.all.filter(isOnDevice).length
  const isGoing = view.sending.size > 0 && reach.state === 'in-reach' && !staysOffLine
  if (count === 0 || isGoing) return ''
  return say(
    '{count, plural, one {One entry waits on this device: the sentences above and the cart do not count it yet.} other {# entries wait on this device: the sentences above and the cart do not count them yet.}}',
    { count },
  )
}
