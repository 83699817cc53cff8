import { type BuildUpMineral, say, sayNumber, sayPercent } from '@sumpbook/fluid'
import type { Book } from '../api/types.ts'
import { sayDay } from '../say/when.ts'
import { type Ahead as AheadAnswer, type Future, sayMineral } from './build.ts'

export function headlineOf(
  { atLimit, name, steady }: Future,
  limit: number | null,
  mineral: BuildUpMineral,
  book: Book,
): string {
  if (limit === null) {
    return steady === null
      ? say('On {water} it grows without end.', { water: name })
      : say('On {water} it ends near {value}.', { water: name, value: sayMineral(steady, mineral) })
  }
  if (atLimit === 0) return say('Over its limit today.')
  return atLimit === null
    ? say('On {water} it never meets its limit.', { water: name })
    : say('At its limit {day}.', { day: dateIn(atLimit, book) })
}

export function sayFuture(
  { name, atLimit, left, steady }: Future,
  limit: number | null,
  mineral: BuildUpMineral,
  book: Book,
): string {
  const end =
    steady === null
      ? say('it grows on without end')
      : say('it comes to rest near {value}', { value: sayMineral(steady, mineral) })
  if (limit === null) return say('{water}: {end}.', { water: name, end })
  const meeting = sayMeeting({ atLimit, left }, sayMineral(limit, mineral), book)
  return say('{water}: {meeting}; {end}.', { water: name, meeting, end })
}

/** When the limit is met, and left again. */
function sayMeeting({ atLimit, left }: Pick<Future, 'atLimit' | 'left'>, limit: string, book: Book): string {
  if (atLimit === null) return say('never at {limit}', { limit })
  const back = left === null ? null : dateIn(left, book)
  if (atLimit === 0) {
    return back === null
      ? say('over {limit} today', { limit })
      : say('over {limit} today, under it again from {back} on', { limit, back })
  }
  const blanks = { limit, day: dateIn(atLimit, book), count: Math.round(atLimit), days: sayNumber(atLimit, 0) }
  return back === null
    ? say('at {limit} {day}, {count, plural, one {in {days} day} other {in {days} days}}', blanks)
    : say(
        'at {limit} {day}, {count, plural, one {in {days} day} other {in {days} days}}, under it again from {back} on',
        { ...blanks, back },
      )
}

const dateIn = (days: number, book: Book): string => {
  const now = new Date()
  const at = new Date(now.getTime() + days * 86_400_000).toISOString()
  return sayDay(at, book.shop.timeZone, now.toISOString())
}

export function sayCycles({ cycles, topUpStrength, strength }: AheadAnswer): string {
  const reader = { units: 'metric' } as const
  const richer =
    cycles === null
      ? say('Nothing is carried off, so there is no end to it.')
      : say('At rest it is {cycles} times as rich as its top-ups.', { cycles: sayNumber(cycles, 1) })
  const reckoned =
    strength < 0.05
      ? say('Reckoned with plain water.')
      : say('Reckoned with top-ups at {strength}.', { strength: sayPercent(strength, reader) })
  if (topUpStrength === null) return `${richer} ${reckoned}`
  const holds = say('Top-ups at {strength} hold the target.', { strength: sayPercent(topUpStrength, reader) })
  return Math.abs(topUpStrength - strength) < 0.05 ? `${richer} ${holds}` : `${richer} ${holds} ${reckoned}`
}
