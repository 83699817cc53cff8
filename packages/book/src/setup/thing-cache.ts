import type { JournalReader } from '../store/store.ts'
import { readThings } from './read-things.ts'
import type { ThingHistory } from './things.ts'

/** The things of a book, read again only after a set-up entry or a void has arrived, from whatever process. */
export function thingCache(journal: JournalReader): () => Promise<ThingHistory> {
  let kept: { seq: number; things: number; history: ThingHistory } | null = null
  return async () => {
    const [head, things] = await Promise.all([journal.head(), journal.countThings()])
    if (kept !== null && kept.things === things) {
      if (kept.seq === head.seq) return kept.history
      const [changed] = await journal.entries({
        order: 'arrival',
        after: { seq: kept.seq },
        kinds: ['setup', 'void'],
        limit: 1,
      })
      if (changed === undefined) {
        kept = { ...kept, seq: head.seq }
        return kept.history
      }
    }
    kept = { seq: head.seq, things, history: await readThings(journal) }
    return kept.history
  }
}
