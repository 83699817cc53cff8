import type { Sump } from '../schema/things/index.ts'
import type { ThingHistory } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import { calendarOf } from './calendar-of.ts'
import type { Estimator } from './estimator.ts'
import { firstChangedDay, type Seen } from './first-changed-day.ts'
import { copyFold, type Fold, foldTo, freshFold } from './fold-shop.ts'
import { journalDays } from './journal-days.ts'
import { rememberedDays } from './remembered-days.ts'
import type { ShopStanding } from './shop-standing.ts'
import { standAt, sumpsAsked } from './stand-at.ts'

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
  /**
   * The shop at the end of each of the last days before an instant, as the records up to then have it, and then at the instant.
   *
   * @param look is shown the shop, which it must not change and may not keep
   * @throws {BookError} `not-found` a sump the book does not have
   */
  walk(ms: number, back: { sump: string; daysBack: number }, look: (then: ShopStanding<S>) => void): Promise<Stood<S>>
  /** The days up to which something is kept, rising; for tests and measurements. */
  readonly kept: readonly number[]
}

/** A shop at an instant, with the sumps asked for. */
export interface Stood<S> {
  standing: ShopStanding<S>
  sumps: Sump[]
}

/** Days before the youngest at which a fold is kept. */
const ages = [0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024, 2048, 4096]

type Look<S> = (then: ShopStanding<S>) => void

interface Kept<S> {
  seen: Seen
  /** The shop's zone and working days. */
  calendar: string
  /** By their day, rising. */
  folds: Fold<S>[]
  /** After the last adoption. */
  adopted: Fold<S> | null
}

/**
 * Keeps folds of a book's days in memory. What arrives late, is withdrawn or set up otherwise throws away those after its day;
 * what is left is gone on from.
 */
export function checkpoints<S, P>(
  journal: JournalReader,
  things: () => Promise<ThingHistory>,
  estimator: Estimator<S, P>,
): Checkpoints<S> {
  let kept: Kept<S> | null = null
  const one = inTurn()

  /** Throws away what is no longer true; gives what a fold needs. */
  async function upToDate(ms: number) {
    const [head, count] = await Promise.all([journal.head(), journal.countThings()])
    const history = await things()
    const { clock, calendar } = calendarOf(history)
    const seen = { seq: head.seq, things: count }
    const key = JSON.stringify([history.at().shop.timeZone, calendar])
    if (kept === null || kept.calendar !== key) kept = { seen, calendar: key, folds: [], adopted: null }
    else forgetAfter(kept, await firstChangedDay(journal, kept.seen, seen, clock))
    kept.seen = seen
    const source = rememberedDays(await journalDays(journal, { history, clock }, { until: ms }))
    return { kept, history, clock, context: { estimator, calendar, source } }
  }

  async function standing(ms: number, sump: string | undefined): Promise<Stood<S>> {
    const { kept, history, clock, context } = await upToDate(ms)
    const fold = await foldUpTo(kept, Math.floor(clock.at(ms)), context)
    const then = history.at(new Date(ms).toISOString())
    const sumps = sumpsAsked(then, sump)
    return { standing: await standAt(fold, { ms, things: then, clock, sumps, ...context }), sumps }
  }

  async function walk(ms: number, { sump, daysBack }: { sump: string; daysBack: number }, look: Look<S>) {
    const { kept, history, clock, context } = await upToDate(ms)
    sumpsAsked(history.at(new Date(ms).toISOString()), sump)
    const today = Math.floor(clock.at(ms))
    const fold = copyFold(await foldUpTo(kept, today - daysBack, context), estimator.copy)
    for (let day = today - daysBack + 1; day <= today; day++) {
      await foldTo(fold, day, context)
      const end = clock.instantOf(day)
      const then = history.at(new Date(end).toISOString())
      look({ shop: fold.shop, memory: fold.memory, things: then, clock, ms: end })
    }
    return standing(ms, sump)
  }

  return {
    standing: (ms, sump) => one(() => standing(ms, sump)),
    walk: (ms, back, look) => one(() => walk(ms, back, look)),
    get kept() {
      return [...(kept?.folds ?? []), ...(kept?.adopted ? [kept.adopted] : [])]
        .map(({ ready }) => ready)
        .sort((a, b) => a - b)
    },
  }
}

/** A fold that has an event of the day, or of one after it, in it is no longer true. */
function forgetAfter<S>(kept: Kept<S>, day: number): void {
  kept.folds = kept.folds.filter(({ ready }) => ready <= day)
  if (kept.adopted !== null && kept.adopted.ready > day) kept.adopted = null
}

/** A fold that is ready for a day; it stays in the keeping and must not be changed. */
async function foldUpTo<S, P>(
  kept: Kept<S>,
  day: number,
  context: Parameters<typeof foldTo<S, P>>[2],
): Promise<Fold<S>> {
  const { copy } = context.estimator
  const there = [...kept.folds, ...(kept.adopted === null ? [] : [kept.adopted])]
    .filter(({ ready }) => ready <= day)
    .reduce<Fold<S> | null>((best, fold) => (best === null || fold.ready > best.ready ? fold : best), null)
  if (there?.ready === day) return there
  const fold = there === null ? freshFold(context) : copyFold(there, copy)
  const began = fold.ready
  for (const stop of ages
    .map((age) => day - age)
    .filter((stop) => stop > began)
    .reverse()) {
    await foldTo(fold, stop, context, (adopted) => {
      if (kept.adopted === null || adopted.ready > kept.adopted.ready) kept.adopted = copyFold(adopted, copy)
    })
    if (fold.lastDay !== null) kept.folds.push(stop === day ? fold : copyFold(fold, copy))
  }
  kept.folds = thinned(kept.folds)
  return fold
}

/** One fold for each doubling of its distance from the youngest, the oldest of those that are about as old. */
function thinned<S>(folds: readonly Fold<S>[]): Fold<S>[] {
  const rising = folds.toSorted((a, b) => a.ready - b.ready)
  const youngest = rising.at(-1)?.ready ?? 0
  const taken = new Set<number>()
  return rising.filter(({ ready }) => {
    const doublings = Math.floor(Math.log2(youngest - ready + 1))
    return !taken.has(doublings) && taken.add(doublings)
  })
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
