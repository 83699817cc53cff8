import { sql } from 'kysely'
import pg from 'pg'
import { expect, onTestFinished, test } from 'vitest'
import { arriving } from '../../journal/arriving.ts'
import { testId, testReading } from '../../testing.ts'
import { openStore } from '../open.ts'
import type { Store } from '../store.ts'
import { opened, postgresPlace, postgresUrl } from '../testing.ts'
import { connectTo } from './open.ts'

const append = (store: Store, ...entries: { id: string; at: string; kind: string }[]) =>
  store.write((journal) => journal.append(entries.map(arriving), '2026-03-03T10:00:00.000Z'))
const idsIn = async (store: Store) => (await store.entries({ order: 'arrival' })).map(({ id }) => id)

test('one database holds several books, each in its own schema', async () => {
  const [one, other] = [await opened(await postgresPlace()), await opened(await postgresPlace())]
  await append(one, testReading(1), testReading(2))
  await append(other, testReading(1, { brix: 9 }))
  expect([await idsIn(one), await idsIn(other)]).toEqual([[1, 2].map(testId), [testId(1)]])
})

test('every column of text stands in the order of its bytes, whatever the server’s own order', async () => {
  const place = await postgresPlace()
  await opened(place)
  const db = connectTo(place)
  onTestFinished(() => db.destroy())
  const { rows } = await sql<{ column: string; collation: string }>`
    select c.relname || '.' || a.attname as column, l.collname as collation
    from pg_attribute a join pg_class c on c.oid = a.attrelid join pg_collation l on l.oid = a.attcollation
    where c.relnamespace = ${place.schema}::regnamespace and c.relkind = 'r' and c.relname not like 'kysely%'`.execute(
    db,
  )
  expect(rows.length).toBeGreaterThan(10)
  expect(rows.filter(({ collation }) => collation !== 'C')).toEqual([])
})

test('a book is made while other schemas of the database come and go', async () => {
  const db = connectTo(await postgresPlace())
  onTestFinished(() => db.destroy())
  let isOver = false
  const comeAndGo = async (name: string) => {
    while (!isOver) {
      await sql`create schema ${sql.id(name)} create table t (n bigserial)`.execute(db)
      await sql`drop schema ${sql.id(name)} cascade`.execute(db)
    }
  }
  const others = Promise.all(['passing_a', 'passing_b', 'passing_c'].map(comeAndGo))
  try {
    for (let n = 0; n < 12; n++) expect(await (await opened(await postgresPlace())).head()).toMatchObject({ seq: 0 })
  } finally {
    isOver = true
    await others
  }
})

test.each([
  ['a serialization failure', '40001'],
  ['a deadlock', '40P01'],
])('a write is tried again after %s', async (_, code) => {
  const store = await opened(await postgresPlace())
  let tries = 0
  await store.write(async (journal) => {
    await journal.append([arriving(testReading(1))], '2026-03-03T10:00:00.000Z')
    tries += 1
    if (tries < 4) throw Object.assign(new Error('conflict'), { code })
  })
  expect(tries).toBe(4)
  expect(await store.head()).toMatchObject({ seq: 1 })
})

test('a conflict that never ends is an error in the end, and nothing was written', { timeout: 20_000 }, async () => {
  const store = await opened(await postgresPlace())
  let tries = 0
  const failing = store.write(async () => {
    tries += 1
    throw Object.assign(new Error('conflict for ever'), { code: '40001' })
  })
  await expect(failing).rejects.toThrow('conflict for ever')
  expect(tries).toBe(10)
  expect(await store.head()).toMatchObject({ seq: 0 })
})

test('many programs may make one book at once', async () => {
  const place = await postgresPlace()
  const stores = await Promise.all([1, 2, 3, 4].map(() => opened(place)))
  await Promise.all(stores.map((store, n) => append(store, testReading(n))))
  expect(await idsIn(stores[0]!)).toHaveLength(4)
})

test('a book that lost its connections goes on with new ones', async () => {
  const place = await postgresPlace()
  const store = await opened(place)
  await append(store, testReading(1))
  const keeper = new pg.Client(place.url)
  await keeper.connect()
  const end = `select pg_terminate_backend(pid) from pg_stat_activity where query like '%${place.schema}%'
    and pid <> pg_backend_pid()`
  const underWay = store.write(async (journal) => {
    await journal.append([arriving(testReading(2))], '2026-03-03T10:00:00.000Z')
    await keeper.query(end)
    await journal.head()
  })
  await expect(underWay).rejects.toMatchObject({ code: 'store-out-of-reach' })
  await keeper.end()
  await append(store, testReading(3))
  expect(await idsIn(store)).toEqual([1, 3].map(testId))
})

test.each([
  ['nobody answers', async () => 'postgresql://sumpbook@127.0.0.1:1/postgres'],
  ['there is no such database', async () => (await postgresUrl()).replace('/postgres', '/nowhere')],
])('a book is out of reach where %s', async (_, url) => {
  const place = { kind: 'postgres', url: await url(), schema: 'public' } as const
  await expect(openStore(place)).rejects.toMatchObject({ code: 'store-out-of-reach' })
})

test.each([['does not wait for its disk', '-c synchronous_commit=off', /synchronous_commit/]])(
  'a server that %s is no place for a book',
  async (_, options, says) => {
    const url = `${(await postgresPlace()).url}?options=${encodeURIComponent(options)}`
    await expect(openStore({ kind: 'postgres', url, schema: 'public' })).rejects.toMatchObject({
      code: 'store-out-of-reach',
      message: expect.stringMatching(says),
    })
  },
)

test('a book of a newer version is left alone', async () => {
  const place = await postgresPlace()
  await (await openStore(place)).close()
  const db = connectTo(place)
  await sql`insert into ${sql.table(`${place.schema}.kysely_migration`)} (name, timestamp)
    values ('9999-from-the-future', '2030-01-01')`.execute(db)
  await db.destroy()
  await expect(openStore(place)).rejects.toMatchObject({ code: 'newer-store' })
})

test('a schema whose name would need care in every statement is refused', async () => {
  const { url } = await postgresPlace()
  await expect(openStore({ kind: 'postgres', url, schema: 'a"; drop table x' })).rejects.toMatchObject({
    code: 'refused-input',
  })
})
