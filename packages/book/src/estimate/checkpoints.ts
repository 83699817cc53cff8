import { sha256 } from '../journal/canonical.ts'
import type { Sump } from '../schema/things/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { Store } from '../store/store.ts'
import { calendarOf } from './calendar-of.ts'
import type { Estimator } from './estimator.ts'
import { firstChangedDay } from './first-changed-day.ts'
import { copyFold, type Fold, type FoldContext, foldTo, freshFold } from './fold-shop.ts'
import { journalDays } from './journal-days.ts'
import {
  emptyKeeping,
  forgetAfter,
  type Keeping,
  type KeptFold,
  keepAdopted,
  keptFold,
  latestUpTo,
  thinned,
} from './kept-folds.ts'
import { rememberedDays } from './remembered-days.ts'
import type { ShopStanding } from './shop-standing.ts'
import { standAt, sumpsAsked } from './stand-at.ts'
import { foldsToStore, storedFolds, storeFolds } from './stored-folds.ts'

/** Where a shop has come to at the ends of some days, kept so that an answer need not begin with the first day. */
export interface Checkpoints<S> {
  /**
   * The shop at an instant, the same as if every day had been folded from the first.
   *
   * @param ms since 1970-01-01 UTC; entries after it do not count
   * @param sump one sump alone
   * @throws {BookError} `not-found` a sump the book does not have
   */
  standing(ms: number, sump?: string): Promise<Stood<S>>
  /** Writes what is kept up to an instant into the store, so that another program need not begin with the first day. */
  settle(ms: number): Promise<void>
  /** The days for which a fold is kept, rising; for tests and measurements. */
  readonly kept: readonly number[]
}

/** A shop at an instant, with the sumps asked for. */
export interface Stood<S> {
  standing: ShopStanding<S>
  sumps: Sump[]
}

/** Days before the youngest at which a fold is kept in memory. */
const ages = [0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024, 2048, 4096]

/** What checkpoints are made of. */
export interface CheckpointParts<S, P> {
  store: Store
  things: () => Promise<ThingHistory>
  estimator: Estimator<S, P>
  /** Stands for everything that decides what the same entries come to. */
  print: () => string
}

/**
 * Keeps folds of a book's days in memory and, when told to, in its store. What arrives late, is withdrawn or set up otherwise
 * throws away those after its day; what is left is gone on from.
 */
export function checkpoints<S, P>({ store, things, estimator, print }: CheckpointParts<S, P>): Checkpoints<S> {
  let keeping: Keeping<S> | null = null
  let stored: ReadonlySet<KeptFold<S>> = new Set()
  const one = inTurn()

  /** Throws away what is no longer true; gives what a fold needs. */
  async function upToDate(ms: number) {
    const { seq, hash, thingsSeal } = await store.sealedHead()
    const history = await things()
    const { clock, calendar } = calendarOf(history)
    const seen = { seq, hash, things: thingsSeal }
    const text = JSON.stringify([history.at().shop.timeZone, calendar])
    const key = () => sha256(`${print()} ${text}`)
    if (keeping === null) keeping = seq === 0 ? null : await storedFolds(store, key(), text, estimator)
    if (keeping === null || keeping.calendar !== text) keeping = emptyKeeping(seen, text)
    else forgetAfter(keeping, await firstChangedDay(store, keeping.seen, seen, clock))
    keeping.seen = seen
    const source = rememberedDays(await journalDays(store, { history, clock }, { until: ms }))
    const current = keeping
    const afterAdoption = (day: number) => (current.adopted?.ready === day ? current.adopted.fold().shop : null)
    return { keeping, key, history, clock, context: { estimator, calendar, source, afterAdoption } }
  }

  async function standing(ms: number, sump: string | undefined): Promise<Stood<S>> {
    const { keeping, history, clock, context } = await upToDate(ms)
    const fold = await foldUpTo(keeping, Math.floor(clock.at(ms)), context)
    const then = history.at(new Date(ms).toISOString())
    const sumps = sumpsAsked(then, sump)
    return { standing: await standAt(fold, { ms, things: then, clock, sumps, ...context }), sumps }
  }

  async function settle(ms: number): Promise<void> {
    const { keeping, key, clock, context } = await upToDate(ms)
    await foldUpTo(keeping, Math.floor(clock.at(ms)), context)
    const chosen = foldsToStore(keeping)
    // Folds that are still true are the same ones: what came since then is told from what the store says it had seen.
    if (chosen.all.every((fold) => stored.has(fold))) return
    await storeFolds(store, keeping.seen, chosen, key(), estimator)
    stored = new Set(chosen.all)
  }

  return {
    standing: (ms, sump) => one(() => standing(ms, sump)),
    settle: (ms) => one(() => settle(ms)),
    get kept() {
      const { folds = [], adopted = null } = keeping ?? {}
      return [...folds, ...(adopted === null ? [] : [adopted])].map(({ ready }) => ready).sort((a, b) => a - b)
    },
  }
}

/** A fold that is ready for a day; it stays in the keeping and must not be changed. */
async function foldUpTo<S, P>(keeping: Keeping<S>, day: number, context: FoldContext<S, P>): Promise<Fold<S>> {
  const { copy } = context.estimator
  const there = latestUpTo(keeping, day)
  if (there?.ready === day) return there.fold()
  const fold = there === null ? freshFold(context) : copyFold(there.fold(), copy)
  const began = fold.ready
  const stops = ages.map((age) => day - age).filter((stop) => stop > began)
  for (const stop of stops.reverse()) {
    await foldTo(fold, stop, context, (adopted) => keepAdopted(keeping, adopted, copy))
    if (fold.lastDay !== null) keeping.folds.push(keptFold(stop === day ? fold : copyFold(fold, copy)))
  }
  keeping.folds = thinned(keeping.folds)
  return fold
}

/** Work that shares a keeping is done one after another. */
function inTurn(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const turn = last.then(work, work)
    last = turn.catch(() => {})
    return turn
  }
}
