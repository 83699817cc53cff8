import { type BuildUpMineral, sayNumber, sayPercent } from '@sumpbook/fluid'
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
      ? `On ${name} it grows without end.`
      : `On ${name} it ends near ${sayMineral(steady, mineral)}.`
  }
  if (atLimit === 0) return 'Over its limit today.'
  return atLimit === null ? `On ${name} it never meets its limit.` : `At its limit ${dateIn(atLimit, book)}.`
}

export function sayFuture(
  { name, atLimit, left, steady }: Future,
  limit: number | null,
  mineral: BuildUpMineral,
  book: Book,
): string {
  const end = steady === null ? 'it grows on without end' : `it comes to rest near ${sayMineral(steady, mineral)}`
  if (limit === null) return `${name}: ${end}.`
  const over = sayMineral(limit, mineral)
  if (atLimit === null) return `${name}: never at ${over}; ${end}.`
  const back = left === null ? '' : `, under it again from ${dateIn(left, book)} on`
  const when =
    atLimit === 0 ? `over ${over} today` : `at ${over} ${dateIn(atLimit, book)}, in ${sayNumber(atLimit, 0)} days`
  return `${name}: ${when}${back}; ${end}.`
}

const dateIn = (days: number, book: Book): string => {
  const now = new Date()
  const at = new Date(now.getTime() + days * 86_400_000).toISOString()
  return sayDay(at, book.shop.timeZone, now.toISOString())
}

export function sayCycles({ cycles, topUpStrength, strength }: AheadAnswer): string {
  const richer =
    cycles === null
      ? 'Nothing is carried off, so there is no end to it.'
      : `At rest it is ${sayNumber(cycles, 1)} times as rich as its top-ups.`
  const reader = { units: 'metric' } as const
  const reckoned =
    strength < 0.05 ? 'Reckoned with plain water.' : `Reckoned with top-ups at ${sayPercent(strength, reader)}.`
  if (topUpStrength === null) return `${richer} ${reckoned}`
  const holds = `Top-ups at ${sayPercent(topUpStrength, reader)} hold the target.`
  return Math.abs(topUpStrength - strength) < 0.05 ? `${richer} ${holds}` : `${richer} ${holds} ${reckoned}`
}
