import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, onTestFinished, test } from 'vitest'
import { arriving } from '../journal/arriving.ts'
import { sha256 } from '../journal/canonical.ts'
import { emptyStore, testId, testReading } from '../testing.ts'
import { openSqliteStore } from './sqlite/open.ts'
import type { Store } from './store.ts'

const received = '2026-03-03T10:00:00.000Z'
const append = (store: Store, ...entries: { id: string; at: string; kind: string }[]) =>
  store.write((journal) => journal.append(entries.map(arriving), received))

function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-store-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

test('entries are numbered from 1 in order of arrival, without gaps', async () => {
  const store = await emptyStore()
  await append(store, testReading(3), testReading(1))
  await append(store, testReading(2))
  const entries = await store.entries({ order: 'arrival' })
  expect(entries.map(({ seq, id }) => [seq, id])).toEqual([
    [1, testId(3)],
    [2, testId(1)],
    [3, testId(2)],
  ])
})

test('the chain is SHA-256 of the hash before, the hash of the body, and the place', async () => {
  const store = await emptyStore()
  await append(store, testReading(1), testReading(2))
  const [first, second] = await store.entries({ order: 'arrival' })
  const one = sha256(`${'0'.repeat(64)}${sha256(first!.body)}1`)
  expect(first!.hash).toBe(one)
  expect(second!.hash).toBe(sha256(`${one}${sha256(second!.body)}2`))
  expect(await store.head()).toEqual({ seq: 2, hash: second!.hash, setupSeq: 0 })
})

test('the head says where the last entry stands that may have changed a thing', async () => {
  const store = await emptyStore()
  const at = '2026-03-03T09:30:00Z'
  const setup = { id: testId(2), at, kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: {} }
  await append(store, testReading(1), setup, testReading(3))
  expect(await store.head()).toMatchObject({ seq: 3, setupSeq: 2 })
  await append(store, testReading(4))
  expect(await store.head()).toMatchObject({ seq: 4, setupSeq: 2 })
  await append(store, { id: testId(5), at, kind: 'void', entry: testId(2) } as never)
  expect(await store.head()).toMatchObject({ seq: 5, setupSeq: 5 })
})

test('in order of time: by instant, at one instant by rank, then by id', async () => {
  const store = await emptyStore()
  const at = '2026-03-03T09:30:00+01:00'
  await append(
    store,
    { id: testId(1), at, kind: 'addition', sump: 's1' } as never,
    testReading(2, { at: '2026-03-03T08:30:00Z' }),
    { id: testId(3), at, kind: 'charge', sump: 's1' } as never,
    testReading(4, { at: '2026-03-03T08:29:59Z' }),
    testReading(5),
  )
  const ids = (await store.entries({ order: 'time' })).map(({ id }) => id)
  expect(ids).toEqual([4, 3, 2, 5, 1].map(testId))
  const backwards = (await store.entries({ order: 'time-backwards' })).map(({ id }) => id)
  expect(backwards).toEqual(ids.toReversed())
})

test('a page begins after the entry before it', async () => {
  const store = await emptyStore()
  await append(store, ...[1, 2, 3, 4, 5].map((n) => testReading(n)))
  const [, second] = await store.entries({ order: 'time', limit: 2 })
  const next = await store.entries({ order: 'time', limit: 2, after: second! })
  expect(next.map(({ id }) => id)).toEqual([3, 4].map(testId))
  const after = await store.entries({ order: 'time', after: { at: second!.at, rank: second!.rank, id: second!.id } })
  expect(after.map(({ id }) => id)).toEqual([3, 4, 5].map(testId))
})

test('a transaction that fails leaves nothing behind', async () => {
  const store = await emptyStore()
  const failing = store.write(async (journal) => {
    await journal.append([arriving(testReading(1))], received)
    throw new Error('lost heart')
  })
  await expect(failing).rejects.toThrow('lost heart')
  expect(await store.head()).toEqual({ seq: 0, hash: '0'.repeat(64), setupSeq: 0 })
  expect(await store.entries({ order: 'arrival' })).toEqual([])
})

test('an id cannot be used twice', async () => {
  const store = await emptyStore()
  await append(store, testReading(1))
  await expect(append(store, testReading(1, { brix: 6 }))).rejects.toThrow(/unique/i)
  expect((await store.head()).seq).toBe(1)
})

test('a book on disk is there again after it was closed', async () => {
  const file = join(folder(), 'deep', 'book.sqlite')
  const before = await openSqliteStore(file)
  await append(before, testReading(1))
  await before.close()
  const store = await openSqliteStore(file)
  onTestFinished(() => store.close())
  expect((await store.entries({ order: 'arrival' })).map(({ id }) => id)).toEqual([testId(1)])
})

test('readers of a book on disk do not wait for a long write', async () => {
  const store = await openSqliteStore(join(folder(), 'book.sqlite'))
  onTestFinished(() => store.close())
  await append(store, testReading(1))
  const seen = await store.write(async (journal) => {
    await journal.append([arriving(testReading(2))], received)
    return { outside: await store.head(), inside: await journal.head() }
  })
  expect(seen).toMatchObject({ outside: { seq: 1 }, inside: { seq: 2 } })
})

test('while another process writes, a writer waits its turn and everything else goes on', async () => {
  const file = join(folder(), 'book.sqlite')
  const [one, other] = [await openSqliteStore(file), await openSqliteStore(file)]
  onTestFinished(async () => {
    await one.close()
    await other.close()
  })
  let finish = () => {}
  const held = one.write(async (journal) => {
    await journal.append([arriving(testReading(1))], received)
    await new Promise<void>((resolve) => {
      finish = resolve
    })
  })
  const waiting = append(other, testReading(2))
  await (await openSqliteStore(file)).close()
  let turns = 0
  const turning = setInterval(() => {
    turns += 1
    if (turns === 40) finish()
  }, 10)
  await held
  await waiting
  clearInterval(turning)
  expect((await one.entries({ order: 'arrival' })).map(({ seq, id }) => [seq, id])).toEqual([
    [1, testId(1)],
    [2, testId(2)],
  ])
})

test('a file that is no database is out of reach, and stays as it was', async () => {
  const file = join(folder(), 'book.sqlite')
  writeFileSync(file, 'This is a letter, not a database, and long enough to be read as one.'.repeat(20))
  await expect(openSqliteStore(file)).rejects.toMatchObject({ code: 'store-out-of-reach' })
})

test('a book of a newer version is left alone', async () => {
  const file = join(folder(), 'book.sqlite')
  await (await openSqliteStore(file)).close()
  const database = new DatabaseSync(file)
  database.exec("insert into kysely_migration (name, timestamp) values ('9999-from-the-future', '2030-01-01')")
  database.close()
  await expect(openSqliteStore(file)).rejects.toMatchObject({ code: 'newer-store' })
})
