import type { JournalReader } from '../store/store.ts'
import { readThings } from './read-things.ts'
import type { ThingHistory } from './things.ts'

/**
 * The things of a book, read again only after a set-up entry, a void or a new thing has arrived, from whatever program. The
 * key is read before the things: what is kept under it may be newer than it, never older.
 */
export function thingCache(journal: JournalReader): () => Promise<ThingHistory> {
  let kept: { key: string; history: ThingHistory } | null = null
  return async () => {
    const { setupHash, thingsSeal } = await journal.sealedHead()
    const key = setupHash + thingsSeal
    if (kept?.key === key) return kept.history
    const history = await readThings(journal)
    kept = { key, history }
    return history
  }
}

const caches = new WeakMap<JournalReader, () => Promise<ThingHistory>>()

/** The things of a book as its store's own cache has them: for who has the store at hand and asks often. */
export function keptThings(journal: JournalReader): Promise<ThingHistory> {
  let cache = caches.get(journal)
  if (cache === undefined) {
    cache = thingCache(journal)
    caches.set(journal, cache)
  }
  return cache()
}
