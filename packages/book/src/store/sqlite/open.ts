import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Kysely, sql } from 'kysely'
import { Migrator } from 'kysely/migration'
import { BookError } from '../../errors.ts'
import { migrations } from '../migrations/index.ts'
import { sqlStore } from '../sql-store.ts'
import type { Store } from '../store.ts'
import type { Tables } from '../tables.ts'
import { untilFree } from '../until-free.ts'
import { sqliteDialect } from './dialect.ts'

/** A book in memory, for tests and for trying out. */
export const inMemory = ':memory:'

/**
 * Opens the book in one SQLite file, making file and folder where there are none, and brings its tables up to date.
 * Every commit is on the disk before it is acknowledged (write-ahead log, `synchronous=FULL`, checked here).
 *
 * @throws {BookError} `store-out-of-reach` where the file cannot be opened, `newer-store` where a newer version made it
 */
export async function openSqliteStore(path: string): Promise<Store> {
  const writer = await connect(path)
  try {
    await migrate(writer)
    const reader = path === inMemory ? writer : await connect(path)
    return sqlStore({ reader, writer, file: path === inMemory ? null : path, isBusy })
  } catch (error) {
    await writer.destroy()
    throw error instanceof BookError ? error : outOfReach(path, error)
  }
}

/** SQLite waits by standing still, and this process with it: short, the store then waits without. */
const busyTimeoutMs = 100

/** BEGIN IMMEDIATE is the one place where another writer is met. */
const isBusy = (error: unknown) => error instanceof Error && /database is locked/.test(error.message)

async function connect(path: string): Promise<Kysely<Tables>> {
  try {
    if (path !== inMemory) mkdirSync(dirname(path), { recursive: true })
    const database = new DatabaseSync(path, { timeout: busyTimeoutMs })
    database.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on')
    assertDurable(database, path)
    return new Kysely<Tables>({ dialect: sqliteDialect(database) })
  } catch (error) {
    if (error instanceof BookError) throw error
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

/** A book that is up to date is only read, so that it opens while another process writes. */
async function migrate(db: Kysely<Tables>): Promise<void> {
  const migrator = new Migrator({ db, provider: migrations })
  const steps = await migrator.getMigrations()
  const done = await stepsDone(db)
  if (done.some((name) => !steps.some((step) => step.name === name))) {
    throw new BookError('newer-store', 'This book was written by a newer version of Sumpbook: start that version.')
  }
  if (done.length === steps.length) return
  await untilFree(async () => {
    const { error } = await migrator.migrateToLatest()
    if (error !== undefined) throw isBusy(error) ? error : outOfReach('The book', error)
  }, isBusy)
}

async function stepsDone(db: Kysely<Tables>): Promise<string[]> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true })
  if (!tables.some(({ name }) => name === 'kysely_migration')) return []
  const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(db)
  return rows.map(({ name }) => name)
}

function outOfReach(path: string, error: unknown): BookError {
  const because = error instanceof Error ? error.message : String(error)
  return new BookError('store-out-of-reach', `${path} cannot be opened: ${because}`)
}
