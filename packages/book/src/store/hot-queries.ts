import type { CompiledQuery, Kysely } from 'kysely'
import type { JournalHead } from './store.ts'
import type { EntryRow, Tables } from './tables.ts'

/** The two statements of a single entry's write, made once: only their values change. */
export interface HotQueries {
  insertEntry(row: EntryRow): CompiledQuery
  moveHead(head: JournalHead): CompiledQuery
}

const sample: EntryRow = {
  seq: 0,
  id: '',
  at: '',
  rank: 0,
  kind: '',
  governs: '',
  sump: '',
  about_kind: '',
  about_id: '',
  body: '',
  hash: '',
  received_at: '',
}
const columns = Object.keys(sample) as (keyof EntryRow)[]

/** A phone's entry comes alone: putting its statements together anew each time would take as long as half of its write. */
export function hotQueries(db: Kysely<Tables>): HotQueries {
  const insert = db.insertInto('entry').values(sample).compile()
  const head = upsertHead(db).compile()
  return {
    insertEntry: (row) => ({ ...insert, parameters: columns.map((column) => row[column]) }),
    moveHead: ({ seq, hash, setupSeq }) => ({ ...head, parameters: [1, seq, hash, setupSeq, seq, hash, setupSeq] }),
  }
}

/** The one row of the head, written for the first time or moved on. */
function upsertHead(db: Kysely<Tables>) {
  const place = { seq: 0, hash: '', setup_seq: 0 }
  return db
    .insertInto('head')
    .values({ one: 1, ...place })
    .onConflict((conflict) => conflict.column('one').doUpdateSet(place))
}
