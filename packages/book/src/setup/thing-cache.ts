import type { JournalReader } from '../store/store.ts'
import { readThings } from './read-things.ts'
import type { ThingHistory } from './things.ts'

/** The things of a book, read again only after a set-up entry, a void or a new thing has arrived, from whatever process. */
export function thingCache(journal: JournalReader): () => Promise<ThingHistory> {
  let kept: { setupSeq: number; things: number; history: ThingHistory } | null = null
  return async () => {
    const [{ setupSeq }, things] = await Promise.all([journal.head(), journal.countThings()])
    if (kept?.setupSeq === setupSeq && kept.things === things) return kept.history
    kept = { setupSeq, things, history: await readThings(journal) }
    return kept.history
  }
}
