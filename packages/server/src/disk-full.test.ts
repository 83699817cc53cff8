import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openBook, verifyStore } from '@sumpbook/book'
import { sql } from 'kysely'
import { expect, onTestFinished, test } from 'vitest'
import { connect, openSqliteStore, storeOf } from '../../book/src/store/sqlite/open.ts'
import { buildApp } from './app.ts'

const now = new Date('2026-03-03T10:00:00.000Z')
const reading = (n: number) => ({
  id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-03-03T09:30:00+01:00',
  kind: 'reading',
  sump: 's1',
  brix: 3.5,
  note: 'words '.repeat(200),
})

/** SQLite says "database or disk is full" where a file reaches its largest size just as where the disk is full. */
test('a full disk answers 507 and changes nothing, reading goes on, and with room again so does writing, without a restart', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-full-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const path = join(folder, 'book.sqlite')
  await (await openSqliteStore(path)).close()
  const [writer, reader] = [await connect(path), await connect(path)]
  const book = openBook(storeOf({ path, reader, writer }), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const put = (n: number) => app.inject({ method: 'PUT', url: `/api/v1/entries/${reading(n).id}`, payload: reading(n) })
  const inBook = async () => (await app.inject('/api/v1/changes')).json() as { head: number; changes: unknown[] }
  expect((await put(1)).statusCode).toBe(201)
  await sql`pragma max_page_count = 40`.execute(writer)
  let accepted = 1
  let answer = await put(2)
  for (; answer.statusCode === 201 && accepted < 200; answer = await put(accepted + 1)) accepted += 1
  expect(answer.statusCode).toBe(507)
  expect(answer.json()).toMatchObject({ type: 'urn:sumpbook:disk-full', status: 507 })
  expect((await put(accepted + 2)).statusCode).toBe(507)
  expect((await put(1)).statusCode).toBe(200)
  expect(await inBook()).toMatchObject({ head: accepted, changes: { length: accepted } })
  expect((await app.inject('/api/v1/today')).statusCode).toBe(200)
  expect((await app.inject('/readyz')).statusCode).toBe(200)
  await sql`pragma max_page_count = 4000`.execute(writer)
  expect((await put(accepted + 1)).statusCode).toBe(201)
  expect((await put(accepted + 2)).statusCode).toBe(201)
  expect(await inBook()).toMatchObject({ head: accepted + 2 })
  expect(await verifyStore(book.store)).toMatchObject({ sound: true, entries: accepted + 2 })
})
