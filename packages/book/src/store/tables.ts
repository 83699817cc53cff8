/** The tables of a book, the same on every database. Times are fixed-width UTC text, bodies canonical JSON. */
export interface Tables {
  /** What the book says of itself: its id, unknown fields of an imported file. */
  meta: { key: string; value: string }
  /** The things of the shop as they first came in; what changed since stands in `setup` entries. */
  thing: { kind: string; id: string; position: number; body: string }
  /** The journal, append-only, in order of arrival. */
  entry: EntryRow
  /** One row: the last arrival, locked by whoever writes next. */
  head: HeadRow
  /** What follows from the journal and may be thrown away. */
  projection: { name: string; day: number; key: string; body: string }
}

export interface HeadRow {
  one: number
  seq: number
  hash: string
  setup_seq: number
  /** The hash at `setup_seq`: it stands for every change of a thing. */
  setup_hash: string
  /** Seals of what the chain leaves out. */
  things_seal: string
  arrivals_seal: string
  meta_seal: string
}

export interface EntryRow {
  /** Order of arrival, without gaps from 1. */
  seq: number
  id: string
  at: string
  /** Order among entries of one instant. */
  rank: number
  kind: string
  /** The kind again where the entry says what others mean (`setup`, `void`, `charge`, `transfer`), else null. */
  governs: string | null
  sump: string | null
  about_kind: string | null
  about_id: string | null
  body: string
  hash: string
  received_at: string
}
