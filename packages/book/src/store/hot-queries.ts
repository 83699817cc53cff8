import type { CompiledQuery, Kysely } from 'kysely'
import type { SealedHead } from './store.ts'
import type { EntryRow, HeadRow, Tables } from './tables.ts'

/** The two statements of a single entry's write, made once: only their values change. */
export interface HotQueries {
  insertEntry(row: EntryRow): CompiledQuery
  moveHead(head: SealedHead): CompiledQuery
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
  envelope: '',
}
const columns = Object.keys(sample) as (keyof EntryRow)[]

/** A phone's entry comes alone: putting its statements together anew each time would take as long as half of its write. */
export function hotQueries(db: Kysely<Tables>): HotQueries {
  const insert = db.insertInto('entry').values(sample).compile()
  const place = headValues({
    seq: 0,
    hash: '',
    setupSeq: 0,
    setupHash: '',
    thingsSeal: '',
    arrivalsSeal: '',
    metaSeal: '',
  })
  const head = db.updateTable('head').set(place).compile()
  return {
    insertEntry: (row) => ({ ...insert, parameters: columns.map((column) => row[column]) }),
    moveHead: (moved) => ({ ...head, parameters: Object.values(headValues(moved)) }),
  }
}

/** The columns of the one row of the head, always in this order. */
const headValues = (head: SealedHead): Omit<HeadRow, 'one'> => ({
  seq: head.seq,
  hash: head.hash,
  setup_seq: head.setupSeq,
  setup_hash: head.setupHash,
  things_seal: head.thingsSeal,
  arrivals_seal: head.arrivalsSeal,
  meta_seal: head.metaSeal,
})
