import type { Entry } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import { rankOf, utc } from './order.ts'
import { withdrawnBy } from './withdrawn.ts'

/** An entry of a log: what is kept of it, and its place in time. */
export interface Logged<Kept> {
  id: string
  /** UTC text of fixed width. */
  at: string
  rank: number
  kept: Kept
}

/** Rows that are read at once. */
const atOnce = 5000

/**
 * The entries of some kinds in order of time, without those that were withdrawn, of which only what `keep` makes is held in
 * memory. The log is read once and then goes on with what arrives: who asks for it on every page asks for little.
 *
 * @param keep what is needed of an entry; null where nothing is
 */
export function entryLog<Kept>(
  kinds: readonly Entry['kind'][],
  keep: (entry: Entry) => Kept | null,
): (journal: JournalReader) => Promise<Logged<Kept>[]> {
  const logs = new WeakMap<JournalReader, { seq: number; entries: Logged<Kept>[] }>()
  return async (journal) => {
    const { seq: head } = await journal.head()
    const log = logs.get(journal) ?? { seq: 0, entries: [] }
    const fresh: Logged<Kept>[] = []
    let seq = log.seq
    while (seq < head) {
      const page = await journal.entries({ kinds, order: 'arrival', after: { seq }, limit: atOnce })
      // What arrived since the head was asked for is read the next time.
      const rows = page.filter((row) => row.seq <= head)
      for (const { id, at, kind, body } of rows) {
        const kept = keep(JSON.parse(body) as Entry)
        if (kept !== null) fresh.push({ id, at: utc(at), rank: rankOf(kind), kept })
      }
      seq = rows.length < atOnce ? head : rows.at(-1)!.seq
    }
    const newest = logs.get(journal)
    const next = newest !== undefined && newest.seq >= seq ? newest : { seq, entries: inTime(log.entries, fresh) }
    logs.set(journal, next)
    const withdrawn = withdrawnBy(await journal.voids())
    return withdrawn.size === 0 ? next.entries : next.entries.filter(({ id }) => !withdrawn.has(id))
  }
}

/** Two logs, or what was there and what came, in order of time. */
export function inTime<Kept>(before: readonly Logged<Kept>[], fresh: readonly Logged<Kept>[]): Logged<Kept>[] {
  if (fresh.length === 0) return [...before]
  return [...before, ...fresh].sort((a, b) => compare(a.at, b.at) || a.rank - b.rank || compare(a.id, b.id))
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
