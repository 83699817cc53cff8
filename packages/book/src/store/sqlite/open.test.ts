import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, onTestFinished, test } from 'vitest'
import { arriving } from '../../journal/arriving.ts'
import { testId, testReading } from '../../testing.ts'
import type { Store } from '../store.ts'
import { testFolder as folder } from '../testing.ts'
import { openSqliteStore } from './open.ts'

const received = '2026-03-03T10:00:00.000Z'
const append = (store: Store, ...entries: { id: string; at: string; kind: string }[]) =>
  store.write((journal) => journal.append(entries.map(arriving), received))

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

test('a book that is closed is nobody’s any more, used or not', async () => {
  const file = join(folder(), 'book.sqlite')
  await (await openSqliteStore(file)).close()
  expect(existsSync(`${file}-wal`)).toBe(false)
  const database = new DatabaseSync(file)
  expect(database.prepare('pragma journal_mode = delete').get()).toEqual({ journal_mode: 'delete' })
  database.close()
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
