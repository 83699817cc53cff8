import { DatabaseSync, type SQLInputValue } from 'node:sqlite'
import { sql } from 'kysely'
import { describe, expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { openStore } from '../store/open.ts'
import type { StorePlace } from '../store/place.ts'
import { connectTo } from '../store/postgres/open.ts'
import { filePlace, opened, places, postgresPlace } from '../store/testing.ts'
import { smallShop, testId, testNow, testReading } from '../testing.ts'
import { tamperings } from './testing.ts'
import { verifyStore } from './verify-store.ts'

const at = '2026-03-03T09:00:00Z'

/** A small book with every kind of row in it. */
async function smallBook(place: StorePlace): Promise<void> {
  const book = openBook(await openStore(place), () => testNow)
  await importBookFile(book.store, JSON.stringify({ ...smallShop(), ours: { a: 1 } }), testNow)
  for (let n = 1; n <= 5; n++) await book.put(testReading(n, { brix: n }))
  await book.put({ id: testId(6), at, kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: { fillVolume: 210 } })
  await book.put({ id: testId(7), at, kind: 'void', entry: testId(2), reason: 'wrong machine', sump: 's1' })
  await book.put(testReading(8, { sump: 'not-known-yet' }))
  await book.put({ id: testId(9), at, kind: 'of-tomorrow', sump: 's1', what: ['ever'] })
  await book.close()
}
const verified = async (place: StorePlace, known?: { seq: number; hash: string }) => {
  const store = await openStore(place)
  try {
    return await verifyStore(store, known)
  } finally {
    await store.close()
  }
}

describe.each(places.filter(([name]) => name !== 'in memory'))('verify, %s', (_, place) => {
  test('a book as it was written is sound, and its head is the chain’s end', async () => {
    const there = await place()
    await smallBook(there)
    const { head } = await (await opened(there)).snapshot(async (journal) => ({ head: await journal.head() }))
    expect(await verified(there)).toEqual({
      sound: true,
      entries: 9,
      things: 5,
      head: { seq: 9, hash: head.hash },
      faults: [],
      more: 0,
      remarks: [],
    })
  })

  test('an empty book is sound', async () => {
    expect(await verified(await place())).toMatchObject({ sound: true, entries: 0, faults: [] })
  })
})

/** Changes a small book in a file by hand. */
async function tampered(statement: string, ...values: SQLInputValue[]) {
  const place = (await filePlace()) as { kind: 'file'; file: string }
  await smallBook(place)
  const database = new DatabaseSync(place.file)
  database.prepare(statement).run(...values)
  database.close()
  return verified(place)
}

test.each<[string, string, SQLInputValue[], { seq: number | null; id: string | null; fault: RegExp }]>([
  [
    'a changed figure',
    `update entry set body = replace(body, '"brix":3', '"brix":4') where seq = 3`,
    [],
    { seq: 3, id: testId(3), fault: /its hash is not that of its body/ },
  ],
  ['an entry taken out', 'delete from entry where seq = 4', [], { seq: 5, id: testId(5), fault: /from place 4 on/ }],
  ['the last entry taken out', 'delete from entry where seq = 9', [], { seq: null, id: null, fault: /9 entries/ }],
  [
    'a changed hash',
    'update entry set hash = ? where seq = 5',
    ['a'.repeat(64)],
    { seq: 5, id: testId(5), fault: /hash/ },
  ],
  [
    'an entry moved to another sump',
    "update entry set sump = 's2' where seq = 1",
    [],
    { seq: 1, id: testId(1), fault: /its column sump holds "s2", and its body says "s1"/ },
  ],
  [
    'another instant of arrival',
    "update entry set received_at = '2026-03-03T10:00:00.001Z' where seq = 2",
    [],
    { seq: null, id: null, fault: /instant of arrival/ },
  ],
  [
    'a moved mark',
    `update thing set body = replace(body, '200', '250') where id = 's1'`,
    [],
    { seq: null, id: null, fault: /things of the shop/ },
  ],
  ['a thing taken out', "delete from thing where id = 'di'", [], { seq: null, id: null, fault: /things of the shop/ }],
  ['a body that is no JSON', "update entry set body = 'x' where seq = 1", [], { seq: 1, id: testId(1), fault: /hash/ }],
  ['no head', 'delete from head', [], { seq: null, id: null, fault: /head of the chain is missing/ }],
  [
    'another note of the book’s own',
    "update meta set value = '{}'",
    [],
    { seq: null, id: null, fault: /says of itself/ },
  ],
])('verify finds %s, and says where', async (_, statement, values, { seq, id, fault }) => {
  const { sound, faults } = await tampered(statement, ...values)
  expect(sound).toBe(false)
  expect(faults[0]).toEqual({ seq, id, fault: expect.stringMatching(fault) })
})

test('one fault is told where it is, not at every entry after it', async () => {
  const { faults } = await tampered(`update entry set body = replace(body, '"brix":1', '"brix":2') where seq = 1`)
  expect(faults).toHaveLength(1)
})

test('whoever works every hash out anew is found by a head that was kept', async () => {
  const place = await filePlace()
  await smallBook(place)
  const { head } = await verified(place)
  const forged = await filePlace()
  const book = openBook(await openStore(forged), () => testNow)
  for (let n = 1; n <= 9; n++) await book.put(testReading(n, { brix: 7 }))
  await book.close()
  expect(await verified(forged)).toMatchObject({ sound: true, head: { seq: 9 } })
  expect((await verified(forged, head)).faults).toMatchObject([{ seq: 9, fault: /another hash/ }])
  expect(await verified(place, { seq: 9, hash: head.hash.slice(0, 12).toUpperCase() })).toMatchObject({ sound: true })
  expect((await verified(place, { seq: 10, hash: head.hash })).faults).toMatchObject([
    { seq: 10, fault: /ends before/ },
  ])
})

test('what two devices made before they met is a remark and no fault', async () => {
  const place = await filePlace()
  const book = openBook(await opened(place), () => testNow)
  await book.put({ id: testId(1), at, kind: 'void', entry: testId(77), sump: 's1' })
  await book.put({ id: testId(2), at, kind: 'setup', about: { kind: 'sump', id: 's9' }, changes: { place: 'Hall 2' } })
  expect(await verified(place)).toMatchObject({
    sound: true,
    remarks: [expect.stringContaining(testId(77)), expect.stringContaining(testId(2))],
  })
})

test('changes made by chance to any table of a book are all found', { timeout: 60_000 }, async () => {
  const place = (await filePlace()) as { kind: 'file'; file: string }
  await smallBook(place)
  const missed: string[] = []
  await tamperings(place.file, { times: 60, seed: 7 }, async (copy, change) => {
    if ((await verified({ kind: 'file', file: copy })).sound) missed.push(change)
  })
  expect(missed).toEqual([])
})

test('the same in PostgreSQL: a figure changed there is found', async () => {
  const there = await postgresPlace()
  await smallBook(there)
  const db = connectTo(there)
  await sql`update ${sql.table(`${there.schema}.entry`)} set body = replace(body, '"brix":3', '"brix":4')`.execute(db)
  await db.destroy()
  expect((await verified(there)).faults).toMatchObject([{ seq: 3, id: testId(3) }])
})
