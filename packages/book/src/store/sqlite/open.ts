import { existsSync, mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Kysely, sql } from 'kysely'
import { BookError } from '../../errors.ts'
import { migrate, noBook } from '../migrate.ts'
import { sqlStore } from '../sql-store.ts'
import type { OpenOptions, Store } from '../store.ts'
import type { Tables } from '../tables.ts'
import { untilFree } from '../until-free.ts'
import { copyBeforeUpgrade } from './copy.ts'
import { sqliteDialect } from './dialect.ts'
import { isBusy, readable } from './errors.ts'
import { patientDialect } from './patient.ts'

/** A book in memory, for tests and for trying out. */
export const inMemory = ':memory:'

/**
 * Opens the book in one SQLite file, making file and folder where there are none, and brings its tables up to date.
 * Every commit is on the disk before it is acknowledged (write-ahead log, `synchronous=FULL`, checked here).
 *
 * @throws {BookError} `store-out-of-reach` where the file cannot be opened, `newer-store` where a newer version made it
 */
export async function openSqliteStore(path: string, options: OpenOptions = {}): Promise<Store> {
  if (options.mustExist && path !== inMemory && !existsSync(path)) throw noBook({ kind: 'file', file: path })
  const writer = await connect(path)
  try {
    await upgrade(writer, path, options)
    const reader = path === inMemory ? writer : await connect(path)
    return storeOf({ path, reader, writer })
  } catch (error) {
    await writer.destroy()
    throw outOfReach(path, error)
  }
}

/** The store over connections to one file. */
export function storeOf({
  path,
  reader,
  writer,
}: {
  path: string
  reader: Kysely<Tables>
  writer: Kysely<Tables>
}): Store {
  return sqlStore({
    reader,
    writer,
    place: path === inMemory ? { kind: 'memory' } : { kind: 'file', file: path },
    // BEGIN IMMEDIATE has waited already.
    locksRows: false,
    again: (attempt) => untilFree(attempt, isBusy),
    readOnce: (read) => (path === inMemory ? writer.connection().execute(read) : readAlone(path, read)),
    hold: (work) => writer.connection().execute(work),
    faultsOfDisk: async () => {
      const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check`.execute(reader)
      return rows.map(({ integrity_check: fault }) => fault).filter((fault) => fault !== 'ok')
    },
    bytes: async () => {
      const { rows } = await sql<{ bytes: number }>`
        select page_count * page_size as bytes from pragma_page_count(), pragma_page_size()`.execute(reader)
      return rows[0]!.bytes
    },
    people: async () => ({ db: new Kysely<Tables>({ dialect: patientDialect({ reader, writer }) }), kind: 'sqlite' }),
  })
}

/** A connection of its own, so that a long reading keeps nobody waiting; a transaction sees one moment. */
async function readAlone<T>(path: string, read: (db: Kysely<Tables>) => Promise<T>): Promise<T> {
  const db = await connect(path)
  try {
    return await db.connection().execute(async (one) => {
      await sql`begin deferred`.execute(one)
      try {
        return await read(one)
      } finally {
        await sql`commit`.execute(one)
      }
    })
  } finally {
    await db.destroy()
  }
}

/** SQLite waits by standing still, and this process with it: short, the store then waits without. */
const busyTimeoutMs = 100

/** One connection to a file, durable or refused. */
export async function connect(path: string): Promise<Kysely<Tables>> {
  try {
    if (path !== inMemory) mkdirSync(dirname(path), { recursive: true })
    const database = new DatabaseSync(path, { timeout: busyTimeoutMs })
    try {
      database.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on')
      assertDurable(database, path)
    } catch (error) {
      database.close()
      throw error
    }
    const db = new Kysely<Tables>({ dialect: sqliteDialect(database) })
    // Kysely closes only what was used once.
    await db.connection().execute(async () => {})
    return db
  } catch (error) {
    throw outOfReach(path, error)
  }
}

function assertDurable(database: DatabaseSync, path: string): void {
  const { synchronous } = database.prepare('pragma synchronous').get() as { synchronous: number }
  const { journal_mode } = database.prepare('pragma journal_mode').get() as { journal_mode: string }
  if (synchronous !== 2 || (path !== inMemory && journal_mode !== 'wal')) {
    throw new BookError('store-out-of-reach', `${path} cannot be written durably: its disk offers no write-ahead log.`)
  }
}

async function upgrade(db: Kysely<Tables>, path: string, { copies, mustExist = false }: OpenOptions): Promise<void> {
  await untilFree(
    () =>
      migrate({
        db,
        stepsDone: () => stepsDone(db),
        ...(mustExist ? { refuseNew: () => noBook({ kind: 'file', file: path }) } : {}),
        keepCopy: (done) => copyBeforeUpgrade(path, done, copies ?? dirname(path)),
      }),
    isBusy,
  )
}

async function stepsDone(db: Kysely<Tables>): Promise<string[]> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true })
  if (!tables.some(({ name }) => name === 'kysely_migration')) return []
  const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(db)
  return rows.map(({ name }) => name)
}

function outOfReach(path: string, error: unknown): unknown {
  const said = readable(error)
  if (said instanceof BookError) return said
  const because = error instanceof Error ? error.message : String(error)
  return new BookError('store-out-of-reach', `${path} cannot be opened: ${because}`)
}
