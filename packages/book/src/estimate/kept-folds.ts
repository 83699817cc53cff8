import type { Seen } from './first-changed-day.ts'
import { copyFold, type Fold } from './fold-shop.ts'

/** A fold in the keeping. It must not be changed; whoever goes on from it takes a copy. */
export interface KeptFold<S> {
  readonly ready: number
  /** Unpacked when it is first asked for, if it came from the store. */
  fold(): Fold<S>
}

/** The folds of a book that are true as far as the journal was seen. */
export interface Keeping<S> {
  seen: Seen
  /** The shop's zone and working days. */
  calendar: string
  /** In no order. */
  folds: KeptFold<S>[]
  /** After the last adoption. */
  adopted: KeptFold<S> | null
}

export const keptFold = <S>(fold: Fold<S>): KeptFold<S> => ({ ready: fold.ready, fold: () => fold })

export const emptyKeeping = <S>(seen: Seen, calendar: string): Keeping<S> => ({
  seen,
  calendar,
  folds: [],
  adopted: null,
})

/** A fold that has an event of the day, or of one after it, in it is no longer true. */
export function forgetAfter<S>(keeping: Keeping<S>, day: number): void {
  keeping.folds = keeping.folds.filter(({ ready }) => ready <= day)
  if (keeping.adopted !== null && keeping.adopted.ready > day) keeping.adopted = null
}

/** The fold that is ready for the latest day up to one; null where there is none. */
export function latestUpTo<S>({ folds, adopted }: Keeping<S>, day: number): KeptFold<S> | null {
  return [...folds, ...(adopted === null ? [] : [adopted])]
    .filter(({ ready }) => ready <= day)
    .reduce<KeptFold<S> | null>((best, one) => (best === null || one.ready > best.ready ? one : best), null)
}

export function keepAdopted<S>(keeping: Keeping<S>, fold: Fold<S>, copy: (shop: S) => S): void {
  if (keeping.adopted === null || fold.ready > keeping.adopted.ready) keeping.adopted = keptFold(copyFold(fold, copy))
}

/** One fold for each doubling of its distance from the youngest, the oldest of those that are about as old. */
export function thinned<S>(folds: readonly KeptFold<S>[]): KeptFold<S>[] {
  const rising = folds.toSorted((a, b) => a.ready - b.ready)
  const youngest = rising.at(-1)?.ready ?? 0
  const taken = new Set<number>()
  return rising.filter(({ ready }) => {
    const doublings = Math.floor(Math.log2(youngest - ready + 1))
    return !taken.has(doublings) && taken.add(doublings)
  })
}
