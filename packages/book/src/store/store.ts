import type { Kysely } from 'kysely'
import type { Head } from '../journal/chain.ts'
import type { BesideRow } from './beside.ts'
import type { StorePlace } from './place.ts'
import type { StoredProjection } from './projections.ts'
import type { Seal } from './seals.ts'
import type { EntryRow, HeldRow, Tables } from './tables.ts'

/** An entry as the journal holds it. */
export interface StoredEntry {
  /** Order of arrival, without gaps from 1. */
  seq: number
  id: string
  /** UTC, fixed width. */
  at: string
  rank: number
  kind: string
  sump: string | null
  /** Canonical JSON of what the device sent. */
  body: string
  hash: string
  receivedAt: string
  /** What the server knows of how it came, canonical JSON; null where it came without accounts. */
  envelope: string | null
}

/** An entry on its way into the journal. */
export interface ArrivingEntry {
  id: string
  at: string
  rank: number
  kind: string
  sump: string | null
  aboutKind: string | null
  aboutId: string | null
  body: string
  envelope?: string | null
}

/** An entry that arrived once already, somewhere else: its instant of arrival comes with it. */
export interface ReceivedEntry extends ArrivingEntry {
  receivedAt: string
}

/** A thing of the shop as it first came in. */
export interface StoredThing {
  kind: string
  id: string
  /** Its place in its section. */
  position: number
  /** Canonical JSON. */
  body: string
}

/** Which entries to read; everything named must hold. */
export interface EntryQuery {
  sump?: string
  /** Only entries about this thing of the shop. */
  about?: { kind: string; id: string }
  kinds?: readonly string[]
  /** Only entries from this instant on (UTC, fixed width), the instant included. */
  since?: string
  /** Only entries up to this instant (UTC, fixed width), the instant included. */
  until?: string
  /** `time`: by at, rank, id. `time-backwards`: youngest first. `arrival`: by seq. */
  order: 'time' | 'time-backwards' | 'arrival'
  /** Only entries after this one in the order asked. */
  after?: { seq: number } | { at: string; rank: number; id: string }
  limit?: number
}

/** What is known: other entries are strangers. */
export interface StrangerQuery {
  sumps: readonly string[]
  kinds: readonly string[]
  /** Only entries that arrived after this place. */
  after: number
}

/** How far the journal has come. */
export interface JournalHead extends Head {
  /** The place of the last entry that may have changed a thing, a set-up or a void; 0 before the first. */
  setupSeq: number
}

/** The head as it is kept, with the seals of what the chain leaves out. */
export interface SealedHead extends JournalHead {
  /** The hash at `setupSeq`: it stands for every change of a thing. */
  setupHash: string
  thingsSeal: Seal
  arrivalsSeal: Seal
  metaSeal: Seal
}

/** What may be read at any time. */
export interface JournalReader {
  head(): Promise<JournalHead>
  sealedHead(): Promise<SealedHead>
  things(): Promise<StoredThing[]>
  countThings(): Promise<number>
  entries(query: EntryQuery): Promise<StoredEntry[]>
  /** Bodies of the entries under these ids; ids without one are left out. */
  bodies(ids: readonly string[]): Promise<Map<string, string>>
  /** The entries under these ids; ids without one are left out. */
  stored(ids: readonly string[]): Promise<Map<string, StoredEntry>>
  /** How many entries each sump has that an entry names, but for some. */
  countBySump(except: ReadonlySet<string>): Promise<Map<string, number>>
  /** How many entries of each kind stand after one place, up to another. */
  countByKind(after: number, upTo: number): Promise<Map<string, number>>
  /** What lies beside the journal and goes where the book goes: people, devices, what is held. */
  beside(): Promise<BesideRow[]>
  /** Entries that wait for a keeper, or waited, under these ids. */
  held(ids: readonly string[]): Promise<Map<string, HeldRow>>
  /** Entries that wait for a keeper now. */
  waitingHeld(): Promise<HeldRow[]>
  /** Entries of no sump of these, or of no kind of these, youngest arrival first. */
  entriesOfStrangers(known: StrangerQuery): Promise<StoredEntry[]>
  /** Every void, standing or not. */
  voids(): Promise<{ id: string; target: string }[]>
  meta(key: string): Promise<string | null>
  /** What is kept under a name, by day. */
  projections(name: string): Promise<StoredProjection[]>
  allMeta(): Promise<{ key: string; value: string }[]>
  /** Entries as they lie, in order of arrival after `after`: for who checks or copies a book. */
  rows(after: number, limit: number): Promise<EntryRow[]>
}

/** What may be written inside a transaction. Nothing is ever changed or deleted but `meta`. */
export interface JournalWriter extends JournalReader {
  /** @returns the place of the last of them */
  append(entries: readonly ArrivingEntry[], receivedAt: string): Promise<number>
  /** Entries of another store, each with the instant it arrived there. */
  appendReceived(entries: readonly ReceivedEntry[]): Promise<number>
  /** Keeps entries outside the journal until a keeper has looked at them. */
  holdBack(entries: readonly HeldRow[]): Promise<void>
  /** Says what became of an entry that was held. */
  answerHeld(id: string, by: { entry: string; answer: 'let in' | 'set aside' }): Promise<void>
  /** Into tables that are empty. */
  addBeside(rows: readonly BesideRow[]): Promise<void>
  addThings(things: readonly StoredThing[]): Promise<void>
  setMeta(key: string, value: string): Promise<void>
  /** Keeps these projections under a name, and no others. */
  keepProjections(name: string, projections: readonly StoredProjection[]): Promise<void>
}

/** How a book is opened. */
export interface OpenOptions {
  /**
   * The folder for the copy that is made of a book before its tables change. Without it a file's copy lies beside the file,
   * and a server database is changed without a copy.
   */
  copies?: string
  /** Refuses where there is no book yet, instead of making one. */
  mustExist?: boolean
}

/** The way to the tables of people. */
export interface PeopleDoor {
  db: Kysely<Tables>
  kind: 'sqlite' | 'postgres'
}

/** A book's store: embedded SQLite, or a PostgreSQL server that several programs share. */
export interface Store extends JournalReader {
  /**
   * All of `work` in one durable transaction, or nothing of it. Writers wait for each other; readers do not wait. Where the
   * database asks for it (a conflict with another writer), `work` runs again from its beginning.
   */
  write<T>(work: (journal: JournalWriter) => Promise<T>): Promise<T>
  /** Everything `work` reads is of one moment, however long it takes and whoever writes meanwhile. */
  snapshot<T>(work: (journal: JournalReader) => Promise<T>): Promise<T>
  readonly place: StorePlace
  /** The tables of people, for who keeps accounts: outside the journal, one statement at a time. */
  people(): Promise<PeopleDoor>
  /** Bytes that the book takes where it lies, its indexes included. */
  bytes(): Promise<number>
  /** What the database itself finds wrong with how the book lies on its disk. */
  faultsOfDisk(): Promise<string[]>
  /** Keeps this process's writers waiting while somebody else (a worker thread with its own connection) writes. Readers go on. */
  hold<T>(work: () => Promise<T>): Promise<T>
  close(): Promise<void>
}
