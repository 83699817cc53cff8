import { type Kysely, sql } from 'kysely'
import { emptyHead, nextHead } from '../journal/chain.ts'
import { type HotQueries, hotQueries } from './hot-queries.ts'
import type {
  ArrivingEntry,
  EntryQuery,
  JournalHead,
  JournalReader,
  JournalWriter,
  Store,
  StoredEntry,
  StoredThing,
} from './store.ts'
import type { EntryRow, Tables } from './tables.ts'
import { untilFree } from './until-free.ts'

/** Rows a statement: large enough to be fast, well under every database's count of parameters. */
const rowsAtOnce = 500

/**
 * The store's queries in SQL that every supported database speaks. Reads go through `reader`, transactions through
 * `writer`; an embedded database gives each its own connection so that nobody waits for a long import.
 */
export function sqlStore({ reader, writer, file, isBusy }: Connections): Store {
  const hot = hotQueries(writer)
  return {
    file,
    hold: (work) => writer.connection().execute(work),
    ...journalReader(reader),
    write: (work) =>
      untilFree(() => writer.transaction().execute((transaction) => work(journalWriter(transaction, hot))), isBusy),
    close: async () => {
      await writer.destroy()
      if (reader !== writer) await reader.destroy()
    },
  }
}

interface Connections {
  reader: Kysely<Tables>
  writer: Kysely<Tables>
  file: string | null
  /** Whether a transaction could not begin because another process writes: it is tried again. */
  isBusy(error: unknown): boolean
}

function journalReader(db: Kysely<Tables>): JournalReader {
  return {
    head: () => headOf(db),
    things: () => db.selectFrom('thing').selectAll().orderBy('kind').orderBy('position').orderBy('id').execute(),
    countThings: async () => {
      const { count } = await db.selectFrom('thing').select(db.fn.countAll().as('count')).executeTakeFirstOrThrow()
      return Number(count)
    },
    entries: (query) => entriesOf(db, query),
    bodies: (ids) => bodiesOf(db, ids),
    countBySump: async () => {
      const rows = await db
        .selectFrom('entry')
        .select(['sump', db.fn.countAll().as('count')])
        .where('sump', 'is not', null)
        .groupBy('sump')
        .execute()
      return new Map(rows.map(({ sump, count }) => [sump!, Number(count)]))
    },
    voids: async () => {
      const rows = await db.selectFrom('entry').select(['id', 'body']).where('governs', '=', 'void').execute()
      return rows.map(({ id, body }) => ({ id, target: (JSON.parse(body) as { entry: string }).entry.toLowerCase() }))
    },
    meta: async (key) => {
      const row = await db.selectFrom('meta').select('value').where('key', '=', key).executeTakeFirst()
      return row?.value ?? null
    },
  }
}

function journalWriter(db: Kysely<Tables>, hot: HotQueries): JournalWriter {
  return {
    ...journalReader(db),
    append: (entries, receivedAt) => append(db, hot, entries, receivedAt),
    addThings: async (things: readonly StoredThing[]) => {
      for (const rows of inParts(things)) await db.insertInto('thing').values(rows).execute()
    },
    setMeta: async (key, value) => {
      await db
        .insertInto('meta')
        .values({ key, value })
        .onConflict((conflict) => conflict.column('key').doUpdateSet({ value }))
        .execute()
    },
  }
}

/** Kinds whose entries say what other entries mean: few, and wanted all at once. */
const governingKinds = new Set(['setup', 'void', 'charge', 'transfer'])
const governs = (kind: string) => governingKinds.has(kind)

async function headOf(db: Kysely<Tables>): Promise<JournalHead> {
  const row = await db.selectFrom('head').select(['seq', 'hash', 'setup_seq']).where('one', '=', 1).executeTakeFirst()
  return row === undefined
    ? { ...emptyHead, setupSeq: 0 }
    : { seq: Number(row.seq), hash: row.hash, setupSeq: Number(row.setup_seq) }
}

async function append(
  db: Kysely<Tables>,
  hot: HotQueries,
  entries: readonly ArrivingEntry[],
  receivedAt: string,
): Promise<number> {
  let { setupSeq, ...head }: JournalHead = await headOf(db)
  if (entries.length === 0) return head.seq
  const rows = entries.map((entry): EntryRow => {
    head = nextHead(head, entry.body)
    if (entry.kind === 'setup' || entry.kind === 'void') setupSeq = head.seq
    const { id, at, rank, kind, sump, aboutKind, aboutId, body } = entry
    return {
      ...head,
      id,
      at,
      rank,
      kind,
      governs: governs(kind) ? kind : null,
      sump,
      about_kind: aboutKind,
      about_id: aboutId,
      body,
      received_at: receivedAt,
    }
  })
  if (rows.length === 1) await db.executeQuery(hot.insertEntry(rows[0]!))
  else for (const part of inParts(rows)) await db.insertInto('entry').values(part).execute()
  await db.executeQuery(hot.moveHead({ ...head, setupSeq }))
  return head.seq
}

async function entriesOf(db: Kysely<Tables>, query: EntryQuery): Promise<StoredEntry[]> {
  const { sump, kinds, since, until, order, after, limit } = query
  let select = db
    .selectFrom('entry')
    .select(['seq', 'id', 'at', 'rank', 'kind', 'sump', 'body', 'hash', 'received_at as receivedAt'])
  if (sump !== undefined) select = select.where('sump', '=', sump)
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
  const rows = await select.execute()
  return rows.map((row) => ({ ...row, seq: Number(row.seq) }))
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
