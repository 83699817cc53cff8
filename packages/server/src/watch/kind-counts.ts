import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Store } from '@sumpbook/book'

/** Entries counted at a time: some milliseconds, then others have their turn. */
const entriesAtOnce = 20_000
/** A look counts on for this long at most; a large book is counted over several looks after the start. */
const budgetMs = 1000

/** How many entries of each kind the journal holds, counted on from where the last look ended. */
export interface KindCounts {
  read(): Promise<ReadonlyMap<string, number>>
}

export function kindCounts(
  store: Pick<Store, 'head' | 'countByKind'>,
  { atOnce = entriesAtOnce, budget = budgetMs }: { atOnce?: number; budget?: number } = {},
): KindCounts {
  const counts = new Map<string, number>()
  let counted = 0
  let running: Promise<void> | null = null
  const countOn = async () => {
    const { seq } = await store.head()
    const from = performance.now()
    while (counted < seq && performance.now() - from < budget) {
      const upTo = Math.min(seq, counted + atOnce)
      for (const [kind, count] of await store.countByKind(counted, upTo)) {
        counts.set(kind, (counts.get(kind) ?? 0) + count)
      }
      counted = upTo
      await nextTurn()
    }
  }
  return {
    read: async () => {
      // Two looks at once share one count.
      running ??= countOn().finally(() => {
        running = null
      })
      await running
      return counts
    },
  }
}
