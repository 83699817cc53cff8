import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openBook, openStore, restore, verifyStore } from '@sumpbook/book'
import { expect, onTestFinished, test, vi } from 'vitest'
import { buildApp } from '../app.ts'

const id = (n: number) => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`
const reading = (n: number) => ({ id: id(n), at: '2026-03-03T09:30:00Z', kind: 'reading', sump: 's1', brix: 5 })
const picture = Buffer.from('\xff\xd8\xff\xe0 a picture', 'latin1')

async function servedBook(entries: number) {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-served-'))
  vi.stubEnv('TMPDIR', folder)
  const book = openBook(await openStore({ kind: 'file', file: join(folder, 'book.sqlite') }), () => new Date())
  const app = await buildApp({ book, version: '0.0.0-test', folder })
  onTestFinished(async () => {
    await app.close()
    await book.close()
    vi.unstubAllEnvs()
    rmSync(folder, { recursive: true })
  })
  await book.putMany(Array.from({ length: entries }, (_, n) => reading(n + 1)))
  mkdirSync(join(folder, 'attachments'))
  writeFileSync(join(folder, 'attachments', createHash('sha256').update(picture).digest('hex')), picture)
  return { app, book, folder }
}
const leftovers = () => readdirSync(tmpdir()).filter((name) => /^sumpbook-(backup|drill)-/.test(name))

test('a book nobody has backed up says so', async () => {
  const { app } = await servedBook(0)
  expect((await app.inject('/api/v1/backup')).json()).toEqual({ made: null, tried: null, running: false })
})

test('the archive that is fetched restores into the same book, attachments included; nothing of it stays here', async () => {
  const { app, book, folder } = await servedBook(30)
  const answer = await app.inject('/api/v1/backup/archive')
  expect(answer.headers).toMatchObject({
    'content-type': 'application/x-tar',
    'content-length': String(answer.rawPayload.length),
    'cache-control': 'no-store',
  })
  const file = join(folder, 'fetched.tar')
  writeFileSync(file, answer.rawPayload)
  const place = { kind: 'file', file: join(folder, 'again', 'book.sqlite') } as const
  const report = await restore(file, place, { attachments: join(folder, 'again', 'attachments') })
  expect(report).toMatchObject({ entries: 30, attachments: 1, head: { seq: 30, hash: (await book.store.head()).hash } })
  const store = await openStore(place)
  expect(await verifyStore(store)).toMatchObject({ sound: true, entries: 30 })
  await store.close()
  await expect.poll(leftovers).toEqual([])
  const { made } = (await app.inject('/api/v1/backup')).json()
  expect(made).toMatchObject({ seq: 30, entries: 30, attachments: 1, bytes: answer.rawPayload.length })
  expect(Date.now() - Date.parse(made.at)).toBeLessThan(60_000)
})

test('a drill restores, walks, compares, and says how it went; nothing of it stays', async () => {
  const { app } = await servedBook(30)
  const answer = await app.inject({ method: 'POST', url: '/api/v1/backup/drill' })
  expect(answer.json()).toMatchObject({
    entries: 30,
    attachments: 1,
    sameBytes: true,
    live: { sameBook: true, arrivedSince: 0 },
  })
  expect(leftovers()).toEqual([])
  const { tried, made } = (await app.inject('/api/v1/backup')).json()
  expect(tried).toMatchObject({ good: true, error: null, seconds: answer.json().seconds })
  // What a drill makes is taken away again: it is no backup.
  expect(made).toBe(null)
})

test('a drill of a book that is not as it was written says so, and that stays on record', async () => {
  const { app, folder } = await servedBook(30)
  const { DatabaseSync } = await import('node:sqlite')
  const database = new DatabaseSync(join(folder, 'book.sqlite'))
  database.exec(`update entry set body = replace(body, '"brix":5', '"brix":6') where seq = 7`)
  database.close()
  const answer = await app.inject({ method: 'POST', url: '/api/v1/backup/drill' })
  expect(answer.json()).toMatchObject({ status: 500, type: 'urn:sumpbook:damaged-store' })
  const { tried } = (await app.inject('/api/v1/backup')).json()
  expect(tried).toMatchObject({ good: false, error: expect.stringContaining('place 7') })
})

test('the server answers while a drill runs, and two drills wait for each other', async () => {
  const { app } = await servedBook(3000)
  let running = true
  const drills = Promise.all([0, 1].map(() => app.inject({ method: 'POST', url: '/api/v1/backup/drill' }))).finally(
    () => {
      running = false
    },
  )
  const waits: number[] = []
  while (running) {
    const from = performance.now()
    expect((await app.inject('/api/v1/backup')).statusCode).toBe(200)
    waits.push(performance.now() - from)
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
  expect((await drills).map(({ statusCode }) => statusCode)).toEqual([200, 200])
  expect(waits.length).toBeGreaterThan(20)
  // A drill of this book takes some hundred milliseconds: nobody has waited for it.
  expect(waits.toSorted((a, b) => a - b)[Math.floor(waits.length / 2)]).toBeLessThan(50)
})

test('a page of another site cannot make the machine back up', async () => {
  const { app } = await servedBook(1)
  const from = (site: string) =>
    app.inject({ url: '/api/v1/backup/archive?from=elsewhere', headers: { 'sec-fetch-site': site } })
  expect((await from('cross-site')).statusCode).toBe(403)
  expect((await app.inject('/api/v1/backup')).json().made).toBe(null)
  expect((await from('same-origin')).statusCode).toBe(200)
})
