import { setImmediate as nextTurn } from 'node:timers/promises'
import type { StoredProjection } from '../store/projections.ts'
import type { JournalReader, Store } from '../store/store.ts'
import type { Estimator } from './estimator.ts'
import type { Seen } from './first-changed-day.ts'
import type { Fold } from './fold-shop.ts'
import type { Keeping, KeptFold } from './kept-folds.ts'
import { type PackedTranslation, packTranslation, unpackTranslation } from './translation.ts'

/** Under what the store keeps folds of a book's days, and the one after the last adoption. */
const names = { folds: 'estimate', adopted: 'estimate-adopted' } as const
/** Days before the youngest for which the store keeps a fold: fewer than memory does. */
const storedAges = [0, 1, 8, 64]

/** A fold as the store keeps it. */
interface PackedFold {
  seen: Seen
  ready: number
  origin: number | null
  lastDay: number | null
  memory: PackedTranslation
  shop: unknown
}

/** The folds worth storing. */
export interface Chosen<S> {
  folds: KeptFold<S>[]
  adopted: KeptFold<S>[]
  all: KeptFold<S>[]
}

/** The youngest, a few older ones for what comes late, and the one after the last adoption. */
export function foldsToStore<S>({ folds, adopted }: Keeping<S>): Chosen<S> {
  const falling = folds.toSorted((a, b) => b.ready - a.ready)
  const youngest = falling[0]?.ready ?? 0
  const ofAges = storedAges.map((age) => falling.find(({ ready }) => ready <= youngest - age))
  const chosen = [...new Set(ofAges.filter((fold) => fold !== undefined))]
  const afterAdoption = adopted === null ? [] : [adopted]
  return { folds: chosen, adopted: afterAdoption, all: [...chosen, ...afterAdoption] }
}

/** Writes folds into the store, in place of those there. */
export async function storeFolds<S>(
  store: Store,
  seen: Seen,
  { folds, adopted }: Chosen<S>,
  key: string,
  { pack }: Pick<Estimator<S, never>, 'pack'>,
): Promise<void> {
  const rowOf = (kept: KeptFold<S>): StoredProjection => {
    const { ready, origin, lastDay, memory, shop } = kept.fold()
    const packed: PackedFold = { seen, ready, origin, lastDay, memory: packTranslation(memory), shop: pack(shop) }
    return { key, day: ready, body: JSON.stringify(packed) }
  }
  // Each is some megabytes of many sumps: between two of them others have their turn.
  const inTurns = async (kept: readonly KeptFold<S>[]) => {
    const rows: StoredProjection[] = []
    for (const fold of kept) {
      rows.push(rowOf(fold))
      await nextTurn()
    }
    return rows
  }
  const rows = { folds: await inTurns(folds), adopted: await inTurns(adopted) }
  await store.write(async (journal) => {
    await journal.keepProjections(names.folds, rows.folds)
    await journal.keepProjections(names.adopted, rows.adopted)
  })
}

/** What the store kept under a key, to be checked against the journal; null where it kept nothing. */
export async function storedFolds<S>(
  journal: JournalReader,
  key: string,
  calendar: string,
  { unpack }: Pick<Estimator<S, never>, 'unpack'>,
): Promise<Keeping<S> | null> {
  const [folds, adopted] = await Promise.all([journal.projections(names.folds), journal.projections(names.adopted)])
  const ours = folds.filter((row) => row.key === key)
  const youngest = ours.at(-1)
  if (youngest === undefined) return null
  const { seen } = JSON.parse(youngest.body) as PackedFold
  const keptOf = ({ day, body }: StoredProjection): KeptFold<S> => ({
    ready: day,
    fold: once(() => unpacked(body, unpack)),
  })
  const last = adopted.find((row) => row.key === key)
  return { seen, calendar, folds: ours.map(keptOf), adopted: last === undefined ? null : keptOf(last) }
}

function unpacked<S>(body: string, unpack: (packed: unknown) => S): Fold<S> {
  const { ready, origin, lastDay, memory, shop } = JSON.parse(body) as PackedFold
  return { ready, origin, lastDay, memory: unpackTranslation(memory), shop: unpack(shop) }
}

function once<T>(work: () => T): () => T {
  let done: { value: T } | null = null
  return () => {
    done ??= { value: work() }
    return done.value
  }
}
