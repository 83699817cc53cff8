import type { ShopEvent } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import type { Estimator } from './estimator.ts'
import type { DaySource, Fold } from './fold-shop.ts'
import type { ShopClock } from './shop-clock.ts'
import { introduce } from './shop-events.ts'
import type { ShopStanding } from './shop-standing.ts'
import { copyTranslation } from './translation.ts'

/** What a fold is to be carried on to. */
export interface Moment<S> {
  /** Milliseconds since 1970-01-01 UTC. */
  ms: number
  /** As they are then. */
  things: Things
  clock: ShopClock
  /** Gives nothing after the moment. */
  source: DaySource
  /** The sumps that shall be spoken of. */
  sumps: readonly Sump[]
  estimator: Pick<Estimator<S, never>, 'copy' | 'takeDay'>
}

/**
 * A shop at an instant: a fold that is ready for its day, with the part of that day before it. The fold itself is not changed,
 * nor may be what is given.
 * A sump of which nothing was ever written is as a sump is that nobody has looked at.
 */
export async function standAt<S>(fold: Fold<S>, moment: Moment<S>): Promise<ShopStanding<S>> {
  const { ms, things, clock, source, sumps, estimator } = moment
  const memory = copyTranslation(fold.memory)
  const at = clock.at(ms)
  const day = Math.floor(at)
  const events: ShopEvent[] = []
  for await (const part of source.days({ from: day, before: day + 1 }, memory)) events.push(...part.events)
  for (const { id } of sumps) introduce(events, id, { id: '', at }, things, memory)
  if (events.length === 0) return { shop: fold.shop, memory, things, clock, ms }
  const shop = estimator.copy(fold.shop)
  estimator.takeDay(shop, day, events)
  return { shop, memory, things, clock, ms }
}

/**
 * All sumps, or the one asked for.
 *
 * @throws {BookError} `not-found`
 */
export function sumpsAsked(things: Things, sump: string | undefined): Sump[] {
  if (sump === undefined) return [...things.sump.values()]
  const one = things.sump.get(sump)
  if (one === undefined) throw new BookError('not-found', `This book has no sump "${sump}".`)
  return [one]
}
