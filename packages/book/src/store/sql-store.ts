import { type Kysely, sql, type Transaction } from 'kysely'
import { BookError } from '../errors.ts'
import { nextHead } from '../journal/chain.ts'
import { addBeside, besideOf } from './beside.ts'
import { edges } from './edges.ts'
import { type HotQueries, hotQueries } from './hot-queries.ts'
import type { StorePlace } from './place.ts'
import { keepProjections, projectionsOf } from './projections.ts'
import { arrivalRow, metaRow, sealed, thingRow, unsealed } from './seals.ts'
import type {
  EntryQuery,
  JournalReader,
  JournalWriter,
  ReceivedEntry,
  SealedHead,
  Store,
  StoredEntry,
  StoredThing,
} from './store.ts'
import type { EntryRow, HeldRow, Tables } from './tables.ts'

/** Rows a statement: large enough to be fast, well under every database's count of parameters. */
const rowsAtOnce = 500

/**
 * The store's queries in SQL that every supported database speaks. Reads go through `reader`, transactions through
 * `writer`; an embedded database gives each its own connection so that nobody waits for a long import.
 */
export function sqlStore(connections: Connections): Store {
  const { reader, writer, place, locksRows, again, readOnce, hold, faultsOfDisk, people, bytes } = connections
  const hot = hotQueries(writer)
  const work = async <T>(transaction: Transaction<Tables>, write: (journal: JournalWriter) => Promise<T>) =>
    write(journalWriter(transaction, hot, await headOf(transaction, { locked: locksRows })))
  return {
    place,
    hold,
    faultsOfDisk,
    people,
    bytes,
    ...journalReader(reader),
    write: (write) => again(() => writer.transaction().execute((transaction) => work(transaction, write))),
    snapshot: (read) => readOnce((db) => read(journalReader(db))),
    close: async () => {
      await writer.destroy()
      if (reader !== writer) await reader.destroy()
    },
  }
}

/** What a database brings to the store. */
export interface Connections {
  reader: Kysely<Tables>
  writer: Kysely<Tables>
  place: StorePlace
  /** Whether a writer waits for another at the head's row (`for update`), or already where its transaction begins. */
  locksRows: boolean
  /** Tries a transaction again where the database asks for it. */
  again<T>(attempt: () => Promise<T>): Promise<T>
  /** Reads inside one read-only transaction. */
  readOnce<T>(read: (db: Kysely<Tables>) => Promise<T>): Promise<T>
  hold: Store['hold']
  faultsOfDisk: Store['faultsOfDisk']
  people: Store['people']
  bytes: Store['bytes']
}

function journalReader(db: Kysely<Tables>): JournalReader {
  return {
    head: async () => {
      const { seq, hash, setupSeq } = await headOf(db)
      return { seq, hash, setupSeq }
    },
    sealedHead: () => headOf(db),
    things: () => db.selectFrom('thing').selectAll().orderBy('kind').orderBy('position').orderBy('id').execute(),
    countThings: async () => {
      const { count } = await db.selectFrom('thing').select(db.fn.countAll().as('count')).executeTakeFirstOrThrow()
      return Number(count)
    },
    entries: (query) => entriesOf(db, query),
    bodies: (ids) => bodiesOf(db, ids),
    stored: async (ids) => {
      const stored = new Map<string, StoredEntry>()
      for (const part of inParts(ids)) {
        for (const row of await entriesSelected(db).where('id', 'in', part).execute()) stored.set(row.id, row)
      }
      return stored
    },
    countBySump: async (except) => {
      const named = (await sumpsNamed(db)).filter((sump) => !except.has(sump))
      if (named.length === 0) return new Map()
      const rows = await db
        .selectFrom('entry')
        .select(['sump', db.fn.countAll().as('count')])
        .where('sump', 'in', named)
        .groupBy('sump')
        .execute()
      return new Map(rows.map(({ sump, count }) => [sump!, Number(count)]))
    },
    countByKind: async (after, upTo) => {
      const rows = await db
        .selectFrom('entry')
        .select(['kind', db.fn.countAll().as('count')])
        .where('seq', '>', after)
        .where('seq', '<=', upTo)
        .groupBy('kind')
        .execute()
      return new Map(rows.map(({ kind, count }) => [kind, Number(count)]))
    },
    beside: () => besideOf(db),
    held: async (ids) => {
      const held = new Map<string, HeldRow>()
      for (const part of inParts(ids)) {
        for (const row of await db.selectFrom('held').selectAll().where('id', 'in', part).execute())
          held.set(row.id, row)
      }
      return held
    },
    waitingHeld: () => db.selectFrom('held').selectAll().where('answer', 'is', null).orderBy('received_at').execute(),
    entriesOfStrangers: async ({ sumps, kinds, after }) => {
      const strange = [...(sumps.length === 0 ? [sql<boolean>`1 = 1`] : []), sql<boolean>`sump is null`]
      return entriesSelected(db)
        .where('seq', '>', after)
        .where((where) =>
          where.or([
            ...strange,
            where('kind', 'not in', kinds),
            ...(sumps.length === 0 ? [] : [where('sump', 'not in', sumps)]),
          ]),
        )
        .orderBy('seq', 'desc')
        .execute()
    },
    voids: async () => {
      const rows = await db.selectFrom('entry').select(['id', 'body']).where('governs', '=', 'void').execute()
      return rows.map(({ id, body }) => ({ id, target: (JSON.parse(body) as { entry: string }).entry.toLowerCase() }))
    },
    meta: async (key) => {
      const row = await db.selectFrom('meta').select('value').where('key', '=', key).executeTakeFirst()
      return row?.value ?? null
    },
    projections: (name) => projectionsOf(db, name),
    allMeta: () => db.selectFrom('meta').selectAll().orderBy('key').execute(),
    rows: (after, limit) =>
      db.selectFrom('entry').selectAll().where('seq', '>', after).orderBy('seq').limit(limit).execute(),
  }
}

/** Writes inside one transaction, which knows where the head stands: nobody else moves it meanwhile. */
function journalWriter(db: Kysely<Tables>, hot: HotQueries, start: SealedHead): JournalWriter {
  let head = start
  const move = async (moved: SealedHead) => {
    await db.executeQuery(hot.moveHead(moved))
    head = moved
  }
  const appendReceived = async (entries: readonly ReceivedEntry[]) => {
    if (entries.length === 0) return head.seq
    const { rows, moved } = placed(entries, head)
    if (rows.length === 1) await db.executeQuery(hot.insertEntry(rows[0]!))
    else for (const part of inParts(rows)) await db.insertInto('entry').values(part).execute()
    await move(moved)
    return moved.seq
  }
  return {
    ...journalReader(db),
    append: (entries, receivedAt) => appendReceived(entries.map((entry) => ({ ...entry, receivedAt }))),
    appendReceived,
    addBeside: (rows) => addBeside(db, rows),
    holdBack: async (entries) => {
      for (const rows of inParts(entries)) await db.insertInto('held').values(rows).execute()
    },
    answerHeld: async (id, { entry, answer }) => {
      await db.updateTable('held').set({ answered_by: entry, answer }).where('id', '=', id).execute()
    },
    keepProjections: (name, projections) => keepProjections(db, name, projections),
    addThings: async (things: readonly StoredThing[]) => {
      if (things.length === 0) return
      for (const rows of inParts(things)) await db.insertInto('thing').values(rows).execute()
      await move({ ...head, thingsSeal: sealed(head.thingsSeal, things.map(thingRow)) })
    },
    setMeta: async (key, value) => {
      const before = await db.selectFrom('meta').selectAll().where('key', '=', key).executeTakeFirst()
      await db
        .insertInto('meta')
        .values({ key, value })
        .onConflict((conflict) => conflict.column('key').doUpdateSet({ value }))
        .execute()
      const rest = before === undefined ? head.metaSeal : unsealed(head.metaSeal, metaRow(before))
      await move({ ...head, metaSeal: sealed(rest, [metaRow({ key, value })]) })
    },
  }
}

/** Entries as rows, each at its place in the chain, and where the head stands after the last. */
function placed(entries: readonly ReceivedEntry[], start: SealedHead): { rows: EntryRow[]; moved: SealedHead } {
  let { setupSeq, setupHash, ...head } = start
  const rows = entries.map((entry): EntryRow => {
    const { id, at, rank, kind, sump, aboutKind, aboutId, body, receivedAt, envelope = null } = entry
    const { seq, hash } = nextHead(head, body)
    head = { ...head, seq, hash }
    if (kind === 'setup' || kind === 'void') [setupSeq, setupHash] = [seq, hash]
    return {
      seq,
      id,
      at,
      rank,
      kind,
      governs: governs(kind) ? kind : null,
      sump,
      about_kind: aboutKind,
      about_id: aboutId,
      body,
      hash,
      received_at: receivedAt,
      envelope,
    }
  })
  const arrivals = rows.map(({ seq, received_at: receivedAt, envelope }) => arrivalRow({ seq, receivedAt, envelope }))
  const arrivalsSeal = sealed(head.arrivalsSeal, arrivals)
  return { rows, moved: { ...head, setupSeq, setupHash, arrivalsSeal } }
}

/** Kinds whose entries say what other entries mean: few, and wanted all at once. */
const governingKinds = new Set(['setup', 'void', 'charge', 'transfer'])
/** Whether an entry of a kind says what other entries mean. */
export const governs = (kind: string) => governingKinds.has(kind)

async function headOf(db: Kysely<Tables>, { locked = false } = {}): Promise<SealedHead> {
  const select = db.selectFrom('head').selectAll()
  const [row, ...more] = await (locked ? select.forUpdate() : select).execute()
  if (row?.one !== 1 || more.length > 0) {
    throw new BookError('damaged-store', 'The book has lost the head of its chain: "sumpbook verify" says more.')
  }
  return {
    seq: row.seq,
    hash: row.hash,
    setupSeq: row.setup_seq,
    setupHash: row.setup_hash,
    thingsSeal: row.things_seal,
    arrivalsSeal: row.arrivals_seal,
    metaSeal: row.meta_seal,
  }
}

const entriesSelected = (db: Kysely<Tables>) =>
  db
    .selectFrom('entry')
    .select(['seq', 'id', 'at', 'rank', 'kind', 'sump', 'body', 'hash', 'received_at as receivedAt', 'envelope'])

async function entriesOf(db: Kysely<Tables>, query: EntryQuery): Promise<StoredEntry[]> {
  const { sump, about, kinds, order, after, limit } = query
  const { since, until } = edges(query)
  let select = entriesSelected(db)
  if (sump !== undefined) select = select.where('sump', '=', sump)
  if (about !== undefined) select = select.where('about_kind', '=', about.kind).where('about_id', '=', about.id)
  if (kinds !== undefined) select = select.where(kinds.every(governs) ? 'governs' : 'kind', 'in', kinds)
  if (since !== undefined) select = select.where('at', '>=', since)
  if (until !== undefined) select = select.where('at', '<=', until)
  if (after !== undefined) select = select.where(isAfter(after, order === 'time-backwards' ? '<' : '>'))
  if (order === 'arrival') select = select.orderBy('seq')
  else {
    const way = order === 'time' ? 'asc' : 'desc'
    select = select.orderBy('at', way).orderBy('rank', way).orderBy('id', way)
  }
  if (limit !== undefined) select = select.limit(limit)
  return select.execute()
}

function isAfter(after: NonNullable<EntryQuery['after']>, way: '<' | '>') {
  if ('seq' in after) return sql<boolean>`seq > ${after.seq}`
  return sql<boolean>`(at, rank, id) ${sql.raw(way)} (${after.at}, ${after.rank}, ${after.id})`
}

async function bodiesOf(db: Kysely<Tables>, ids: readonly string[]): Promise<Map<string, string>> {
  const bodies = new Map<string, string>()
  for (const part of inParts(ids)) {
    const rows = await db.selectFrom('entry').select(['id', 'body']).where('id', 'in', part).execute()
    for (const { id, body } of rows) bodies.set(id, body)
  }
  return bodies
}

function* inParts<T>(items: readonly T[]): Generator<T[]> {
  for (let from = 0; from < items.length; from += rowsAtOnce) yield items.slice(from, from + rowsAtOnce)
}

/** Every sump that an entry names: from one to the next in the index, however many entries each has. */
async function sumpsNamed(db: Kysely<Tables>): Promise<string[]> {
  const rows = await db
    .withRecursive('named(sump)', (one) =>
      one
        .selectFrom('entry')
        .select(({ fn }) => fn.min('sump').as('sump'))
        .unionAll(
          one
            .selectFrom('named')
            .where('named.sump', 'is not', null)
            .select((next) =>
              next
                .selectFrom('entry')
                .whereRef('entry.sump', '>', 'named.sump')
                .select(({ fn }) => fn.min('entry.sump').as('least'))
                .as('sump'),
            ),
        ),
    )
    .selectFrom('named')
    .select('sump')
    .where('sump', 'is not', null)
    .execute()
  return rows.map(({ sump }) => sump!)
}
