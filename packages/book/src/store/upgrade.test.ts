import { spawn } from 'node:child_process'
import { copyFileSync, existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { setTimeout as delay } from 'node:timers/promises'
import { type Kysely, sql } from 'kysely'
import { Migrator } from 'kysely/migration'
import { expect, test } from 'vitest'
import { restore } from '../backup/restore.ts'
import { verifyStore } from '../integrity/verify-store.ts'
import { arriving } from '../journal/arriving.ts'
import { emptyHead, nextHead } from '../journal/chain.ts'
import { testReading } from '../testing.ts'
import { migrations } from './migrations/index.ts'
import { openStore } from './open.ts'
import { connectTo } from './postgres/open.ts'
import { connect, openSqliteStore } from './sqlite/open.ts'
import type { Tables } from './tables.ts'
import { opened, postgresPlace, testFolder } from './testing.ts'

const steps = Object.keys(await migrations.getMigrations()).sort()
const earlier = steps.slice(0, -1)
const at = '2026-03-03T10:00:00.000Z'

/** A book as the version wrote it whose last step this was, with some entries. */
async function writtenAt(db: Kysely<Tables>, step: string, { entries, schema }: { entries: number; schema?: string }) {
  const migrator = new Migrator({
    db,
    provider: migrations,
    ...(schema === undefined ? {} : { migrationTableSchema: schema }),
  })
  const { error } = await migrator.migrateTo(step)
  if (error !== undefined) throw error
  let head = emptyHead
  const rows = Array.from({ length: entries }, (_, n) => {
    const { aboutKind, aboutId, ...entry } = arriving(testReading(n))
    head = nextHead(head, entry.body)
    return { ...entry, ...head, governs: null, about_kind: aboutKind, about_id: aboutId, received_at: at }
  })
  for (let from = 0; from < rows.length; from += 500) {
    await db
      .insertInto('entry')
      .values(rows.slice(from, from + 500))
      .execute()
  }
  await db.insertInto('thing').values({ kind: 'sump', id: 's1', position: 0, body: '{"id":"s1"}' }).execute()
  await db.insertInto('meta').values({ key: 'a', value: '{}' }).execute()
  const place = { seq: head.seq, hash: head.hash, setup_seq: 0 }
  await db
    .insertInto('head')
    .values({ one: 1, ...place } as never)
    .onConflict((conflict) => conflict.column('one').doUpdateSet(place))
    .execute()
  await db.destroy()
  return head
}

test('there are earlier versions to come from', () => {
  expect(earlier).toContain('0001-journal')
})

test.each(earlier)('a file of the version of %s is upgraded; a copy of it as it was lies beside it', async (step) => {
  const folder = testFolder()
  const file = join(folder, 'book.sqlite')
  const head = await writtenAt(await connect(file), step, { entries: 30 })
  const store = await opened({ kind: 'file', file })
  expect(await store.head()).toEqual({ ...head, setupSeq: 0 })
  if (step < '0003') expect(await verifyStore(store)).toMatchObject({ sound: true, entries: 30, things: 1 })
  const copy = new DatabaseSync(join(folder, `book.before-upgrade-from-${step}.sqlite`), { readOnly: true })
  expect(copy.prepare('select max(name) as step from kysely_migration').get()).toEqual({ step })
  expect(copy.prepare('select count(*) as n from entry').get()).toEqual({ n: 30 })
  copy.close()
  await (await openStore({ kind: 'file', file })).close()
  expect(readdirSync(folder).filter((name) => name.includes('before-upgrade'))).toHaveLength(1)
})

test.each(earlier)('a database of the version of %s is upgraded, after a backup of it', async (step) => {
  const place = await postgresPlace()
  const folder = testFolder()
  const head = await writtenAt(connectTo(place), step, { entries: 30, schema: place.schema })
  const store = await openStore(place, { copies: folder })
  expect(await store.head()).toEqual({ ...head, setupSeq: 0 })
  if (step < '0003') expect(await verifyStore(store)).toMatchObject({ sound: true, entries: 30 })
  await store.close()
  const [backup] = readdirSync(folder)
  expect(backup).toBe(`${place.schema}.before-upgrade-from-${step}.sumpbook.tar`)
  const other = { kind: 'file', file: join(testFolder(), 'book.sqlite') } as const
  const restored = await restore(join(folder, backup!), other, { attachments: join(folder, 'attachments') })
  expect(restored).toMatchObject({ head, entries: 30 })
})

test('a new book is not copied', async () => {
  const folder = testFolder()
  await (await openSqliteStore(join(folder, 'book.sqlite'))).close()
  expect(readdirSync(folder)).toEqual(['book.sqlite'])
})

test('where no copy can be made nothing is upgraded', async () => {
  const folder = testFolder()
  const file = join(folder, 'book.sqlite')
  await writtenAt(await connect(file), '0001-journal', { entries: 3 })
  await expect(openSqliteStore(file, { copies: join(file, 'no-folder') })).rejects.toMatchObject({
    code: 'store-out-of-reach',
  })
  const database = new DatabaseSync(file)
  expect(database.prepare('select name from kysely_migration').all()).toEqual([{ name: '0001-journal' }])
  database.close()
})

test('an upgrade that is killed in its middle leaves the book as it was or upgraded, never between', {
  timeout: 60_000,
}, async () => {
  const folder = testFolder()
  const old = join(folder, 'old.sqlite')
  const head = await writtenAt(await connect(old), '0001-journal', { entries: 8_000 })
  const program = `import { openSqliteStore } from ${JSON.stringify(new URL('./sqlite/open.ts', import.meta.url).href)}
    console.log('opening')
    await (await openSqliteStore(process.argv[1])).close()`
  const states = new Set<string>()
  for (let n = 0; n < 4; n++) {
    const file = join(folder, `${n}.sqlite`)
    copyFileSync(old, file)
    const child = spawn(process.execPath, ['--input-type=module', '-e', program, file], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    const ended = new Promise((resolve) => child.once('exit', resolve))
    await new Promise((resolve) => child.stdout.once('data', resolve))
    await delay(n * 40)
    child.kill('SIGKILL')
    await ended
    const database = new DatabaseSync(file)
    const { done } = database.prepare('select count(*) as done from kysely_migration').get() as { done: number }
    database.close()
    expect([1, steps.length]).toContain(done)
    states.add(String(done))
    const store = await opened({ kind: 'file', file })
    expect(await verifyStore(store, head)).toMatchObject({ sound: true, entries: 8_000 })
    expect(existsSync(join(folder, `${n}.before-upgrade-from-0001-journal.sqlite`))).toBe(true)
  }
  expect(states).toContain('1')
})

test('a step that fails half way leaves nothing of itself', async () => {
  const file = join(testFolder(), 'book.sqlite')
  const db = await connect(file)
  const failing = {
    up: async (inside: Kysely<Tables>) => {
      await sql`create table half (done text)`.execute(inside)
      throw new Error('no further')
    },
  }
  const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ '0001-half': failing }) } })
  expect(await migrator.migrateToLatest()).toMatchObject({ error: expect.objectContaining({ message: 'no further' }) })
  expect((await sql`select name from sqlite_schema where name = 'half'`.execute(db)).rows).toEqual([])
  await db.destroy()
})
