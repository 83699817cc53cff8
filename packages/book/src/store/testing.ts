import { mkdtempSync, rmSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { sql } from 'kysely'
import { inject, onTestFinished } from 'vitest'
import { openStore } from './open.ts'
import type { StorePlace } from './place.ts'
import { connectTo } from './postgres/open.ts'
import type { Store } from './store.ts'

/** A folder of the test's own, gone with it. */
export function testFolder(): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-store-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

/**
 * The run's PostgreSQL server, started by the first test that asks.
 *
 * @throws where no server can be had: a test of it then fails, it is never passed over
 */
export async function postgresUrl(): Promise<string> {
  const { url, error } = JSON.parse(await text(connect(inject('postgresDoor'), '127.0.0.1'))) as Record<string, string>
  if (url === undefined) throw new Error(`there is no PostgreSQL server to test on: ${error}`)
  return url
}

let schemas = 0

/** A place for a book on the run's server: a schema that does not exist yet and is gone with the test. */
export async function postgresPlace(): Promise<Extract<StorePlace, { kind: 'postgres' }>> {
  const schema = `book_${process.pid}_${++schemas}_${Date.now()}`
  const place = { kind: 'postgres', url: await postgresUrl(), schema } as const
  onTestFinished(async () => {
    const db = connectTo(place)
    const { rows } = await sql<{ name: string }>`
      select nspname as name from pg_namespace where nspname like ${`${schema}%`}`.execute(db)
    for (const { name } of rows) await sql`drop schema ${sql.id(name)} cascade`.execute(db)
    await db.destroy()
  })
  return place
}

/** A place for a book in a file. */
export const filePlace = async (): Promise<StorePlace> => ({ kind: 'file', file: join(testFolder(), 'book.sqlite') })

/** The kinds of places a book can lie at, each with a way to a fresh one: what holds of a store holds at each. */
export const places: readonly (readonly [name: string, place: () => Promise<StorePlace>])[] = [
  ['in memory', async () => ({ kind: 'memory' })],
  ['SQLite', filePlace],
  ['PostgreSQL', postgresPlace],
]

/** Opens a store that is closed with the test. */
export async function opened(place: StorePlace): Promise<Store> {
  const store = await openStore(place)
  onTestFinished(() => store.close())
  return store
}
