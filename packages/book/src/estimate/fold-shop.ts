import { setImmediate as nextTurn } from 'node:timers/promises'
import type { WorkCalendar } from '@sumpbook/fluid'
import type { Estimator } from './estimator.ts'
import type { ShopDay, Span } from './shop-events.ts'
import { copyTranslation, freshTranslation, type Translation } from './translation.ts'

/** How far a shop's days have been folded: everything before one day's first event. */
export interface Fold<S> {
  /** Every event of the days before this one is in, and what is adopted on it is adopted; −∞ before anything. */
  ready: number
  shop: S
  memory: Translation
  /** The day from which the days of adoption count; null before the first event. */
  origin: number | null
  /** The last day with events. */
  lastDay: number | null
}

/** The days of a shop, as often as they are asked for. */
export interface DaySource {
  /**
   * The days from one day on, up to and without another.
   *
   * @param memory as it was before the first of them; goes along, so that at each day given it stands at that day's end. Null where
   * the days come from the first on and nobody needs it after
   */
  days(span: Span, memory: Translation | null): AsyncIterable<ShopDay>
}

/** How a shop is folded: by which estimator, in which calendar, from which days. */
export interface FoldContext<S, P> {
  estimator: Estimator<S, P>
  calendar: WorkCalendar
  source: DaySource
  /** The shop just after an adoption, where somebody knows it; it is not changed. */
  afterAdoption?: (day: number) => S | null
}

/** After so many days without any event the days of adoption count anew: one clock that was years off must not decide them. */
const newBeginning = 400

export const freshFold = <S, P>({ estimator, calendar }: Omit<FoldContext<S, P>, 'source'>): Fold<S> => ({
  ready: Number.NEGATIVE_INFINITY,
  shop: estimator.open(calendar),
  memory: freshTranslation(),
  origin: null,
  lastDay: null,
})

export const copyFold = <S>(fold: Fold<S>, copy: (shop: S) => S): Fold<S> => ({
  ...fold,
  shop: copy(fold.shop),
  memory: copyTranslation(fold.memory),
})

/**
 * Folds a shop up to a day, which is left untouched. On days of adoption what the shop has taught is learnt from all days
 * before, and these are folded again from the first under what was learnt: the outcome follows from the events of the days
 * before alone, whatever the way there.
 *
 * @param fold is carried on
 * @param adopted is told of the fold as it stands after each adoption
 */
export async function foldTo<S, P>(
  fold: Fold<S>,
  before: number,
  context: FoldContext<S, P>,
  adopted: (fold: Fold<S>) => void = () => {},
): Promise<void> {
  const { estimator, source } = context
  const breathe = breather()
  while (fold.ready < before) {
    const adoption = nextAdoption(fold, before, estimator)
    const end = adoption ?? before
    let begun = false
    for await (const { day, events } of source.days({ from: fold.ready, before: end }, fold.memory)) {
      begun = fold.lastDay === null || day - fold.lastDay > newBeginning
      if (begun) fold.origin = day
      await breathe(events.length)
      estimator.takeDay(fold.shop, day, events)
      fold.lastDay = day
      if (begun) break
    }
    fold.ready = begun ? fold.lastDay! + 1 : end
    if (begun || adoption === null) continue
    const known = context.afterAdoption?.(adoption) ?? null
    fold.shop = known === null ? await foldUnder(estimator.learn(fold.shop), adoption, context) : estimator.copy(known)
    adopted(fold)
  }
}

function nextAdoption<S, P>({ ready, origin }: Fold<S>, before: number, { isAdoptionDay }: Estimator<S, P>) {
  if (origin === null) return null
  for (let day = ready + 1; day <= before; day++) if (isAdoptionDay(origin, day)) return day
  return null
}

async function foldUnder<S, P>(
  priors: P,
  before: number,
  { estimator, calendar, source }: FoldContext<S, P>,
): Promise<S> {
  const shop = estimator.open(calendar, priors)
  const breathe = breather()
  for await (const { day, events } of source.days({ from: Number.NEGATIVE_INFINITY, before }, null)) {
    await breathe(events.length)
    estimator.takeDay(shop, day, events)
  }
  return shop
}

/** Events after which whoever else waits gets a turn: folding does not wait for anything by itself. */
const eventsATurn = 500

function breather(): (events: number) => Promise<void> | void {
  let since = 0
  return (events) => {
    since += events
    if (since < eventsATurn) return
    since = 0
    return nextTurn()
  }
}
