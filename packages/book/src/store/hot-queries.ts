import type { CompiledQuery, Kysely } from 'kysely'
import type { Head } from '../journal/chain.ts'
import type { EntryRow, Tables } from './tables.ts'

/** The two statements of a single entry's write, made once: only their values change. */
export interface HotQueries {
  insertEntry(row: EntryRow): CompiledQuery
  moveHead(head: Head): CompiledQuery
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
  const head = upsertHead(db, { seq: 0, hash: '' }).compile()
  return {
    insertEntry: (row) => ({ ...insert, parameters: columns.map((column) => row[column]) }),
    moveHead: ({ seq, hash }) => ({ ...head, parameters: [1, seq, hash, seq, hash] }),
  }
}

/** The one row of the head, written for the first time or moved on. */
const upsertHead = (db: Kysely<Tables>, { seq, hash }: Head) =>
  db
    .insertInto('head')
    .values({ one: 1, seq, hash })
    .onConflict((conflict) => conflict.column('one').doUpdateSet({ seq, hash }))
