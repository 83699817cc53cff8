import { join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import { Kysely, sql } from 'kysely'
import { backUp } from '../../backup/back-up.ts'
import { BookError } from '../../errors.ts'
import { migrate, noBook } from '../migrate.ts'
import type { StorePlace } from '../place.ts'
import { sqlStore } from '../sql-store.ts'
import type { OpenOptions, Store } from '../store.ts'
import type { Tables } from '../tables.ts'
import { BookPostgresDialect, bookPool } from './dialect.ts'
import { isConflict } from './errors.ts'

type PostgresPlace = Extract<StorePlace, { kind: 'postgres' }>

/**
 * Opens the book in one schema of a PostgreSQL database, making schema and tables where there are none, and brings the tables
 * up to date. Any number of programs may have it open: every fact lies in the database, writers wait for each other at
 * the head's row.
 *
 * @throws {BookError} `store-out-of-reach` where the server cannot be had or does not write durably, `newer-store`
 */
export async function openPostgresStore(place: PostgresPlace, options: OpenOptions = {}): Promise<Store> {
  const db = connectTo(place)
  try {
    await assertDurable(db)
    await retried(() => upgrade(db, place, options))
    return storeOf(db, place)
  } catch (error) {
    await db.destroy()
    if (error instanceof BookError) throw error
    const because = error instanceof Error ? error.message : String(error)
    throw new BookError('store-out-of-reach', `The book in the database cannot be opened: ${because}`)
  }
}

/** Every statement names its schema: nothing depends on a connection's own settings, which a pooling proxy may share out. */
export function connectTo({ url, schema }: PostgresPlace): Kysely<Tables> {
  if (!/^[a-z_][a-z0-9_]{0,62}$/.test(schema)) {
    throw new BookError('refused-input', `schema: found "${schema}", expected small letters, digits and _, at most 63`)
  }
  return new Kysely<Tables>({ dialect: new BookPostgresDialect(bookPool(url), schema) }).withSchema(schema)
}

function storeOf(db: Kysely<Tables>, place: PostgresPlace): Store {
  return sqlStore({
    reader: db,
    writer: db,
    place,
    locksRows: true,
    again: retried,
    readOnce: (read) => db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(read),
    // Whoever writes, from whatever process, waits at the head's row: there is nobody to keep waiting here.
    hold: (work) => work(),
    faultsOfDisk: async () => [],
    bytes: async () => {
      const { rows } = await sql<{ bytes: string | null }>`
        select sum(pg_total_relation_size(format('%I.%I', schemaname, tablename)::regclass)) as bytes
        from pg_tables where schemaname = ${place.schema}`.execute(db)
      return Number(rows[0]!.bytes ?? 0)
    },
    people: async () => ({ db, kind: 'postgres' }),
  })
}

/** How often a transaction is tried before its conflict is an error. */
const triesAtMost = 10

/** Conflicts between writers pass: a little later, and not at the same moment for everybody, the transaction is tried again. */
async function retried<T>(attempt: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await attempt()
    } catch (error) {
      if (!isConflict(error) || tries === triesAtMost) throw error
      await delay(Math.random() * Math.min(1000, 10 * 2 ** tries))
    }
  }
}

/** What was acknowledged is on the server's disk, or the server is not one for a book. */
async function assertDurable(db: Kysely<Tables>): Promise<void> {
  const { rows } = await sql<{ fsync: string; commits: string; encoding: string }>`
    select current_setting('fsync') as fsync, current_setting('synchronous_commit') as commits,
      current_setting('server_encoding') as encoding`.execute(db)
  const { fsync, commits, encoding } = rows[0]!
  if (fsync === 'off' || commits === 'off') {
    throw new BookError(
      'store-out-of-reach',
      'The database server acknowledges what is not on its disk yet: it needs fsync and synchronous_commit on.',
    )
  }
  if (encoding !== 'UTF8') {
    throw new BookError('store-out-of-reach', `The database has the encoding ${encoding}, and a book needs UTF8.`)
  }
}

async function upgrade(
  db: Kysely<Tables>,
  place: PostgresPlace,
  { mustExist = false, copies }: OpenOptions,
): Promise<void> {
  const { schema } = place
  await migrate({
    db,
    schema,
    stepsDone: () => stepsDone(db, schema),
    ...(mustExist ? { refuseNew: () => noBook(place) } : {}),
    keepCopy: async (done) => {
      if (copies === undefined) return
      const file = join(copies, `${schema}.before-upgrade-from-${done.toSorted().at(-1)}.sumpbook.tar`)
      await storeOf(db, place).snapshot((journal) => backUp(journal, file))
    },
  })
}

async function stepsDone(db: Kysely<Tables>, schema: string): Promise<string[]> {
  const { rows: found } = await sql<{ there: string | null }>`
    select to_regclass(${`"${schema}".kysely_migration`}) as there`.execute(db)
  if (found[0]!.there === null) return []
  const { rows } = await sql<{ name: string }>`select name from ${sql.table(`${schema}.kysely_migration`)}`.execute(db)
  return rows.map(({ name }) => name)
}
