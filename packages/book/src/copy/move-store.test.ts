import { expect, onTestFinished, test } from 'vitest'
import { openBook } from '../book.ts'
import { exportBook } from '../export/export-book.ts'
import { importBookFile } from '../import/import-book.ts'
import type { Store } from '../store/store.ts'
import { filePlace, opened, postgresPlace } from '../store/testing.ts'
import { smallShop, testId, testNow, testReading } from '../testing.ts'
import { moveStore } from './move-store.ts'

async function fullStore(store: Store): Promise<void> {
  let now = testNow.getTime()
  const book = openBook(store, () => {
    now += 1_001
    return new Date(now)
  })
  await importBookFile(store, JSON.stringify(smallShop({ 'of ours': ['kept'], meters: [] })), testNow)
  for (let n = 1; n <= 30; n++) await book.put(testReading(n, { note: `Säge ${n} “quoted” \u0000` }))
  await book.put({
    id: testId(31),
    at: '2026-03-03T09:00:00Z',
    kind: 'void',
    entry: testId(2),
    reason: 'wrong machine',
    sump: 's1',
  })
  await book.put(testReading(32, { sump: 'Äußere Bohrmühle', unknown: { z: 1, a: 2 } }))
  await book.put({ id: testId(33), at: '2026-03-03T09:00:00Z', kind: 'of-tomorrow', sump: 's1' })
}
async function exported(store: Store): Promise<string> {
  let text = ''
  for await (const piece of exportBook(store)) text += piece
  return text
}
const chainOf = async (store: Store) =>
  (await store.rows(0, 100)).map(({ seq, id, hash, received_at: receivedAt, body }) => [
    seq,
    id,
    hash,
    receivedAt,
    body,
  ])

test('a book moves into a database and back: the same export to the byte, the same chain', async () => {
  const [here, there, back] = [await filePlace(), await postgresPlace(), await filePlace()]
  const from = await opened(here)
  await fullStore(from)
  const [text, chain, head] = [await exported(from), await chainOf(from), await from.sealedHead()]
  let source = from
  for (const place of [there, back]) {
    const target = await opened(place)
    expect(await moveStore(source, target)).toMatchObject({ sound: true, entries: 33, head: { seq: 33 } })
    expect(await exported(target)).toBe(text)
    expect(await chainOf(target)).toEqual(chain)
    expect(await target.sealedHead()).toEqual(head)
    source = target
  }
  expect(await exported(from)).toBe(text)
})

test('a book is not moved onto another', async () => {
  const [from, to] = [await opened(await filePlace()), await opened(await filePlace())]
  await fullStore(from)
  await openBook(to, () => testNow).put(testReading(1))
  await expect(moveStore(from, to)).rejects.toMatchObject({ code: 'store-not-empty' })
  expect(await chainOf(to)).toHaveLength(1)
})

test('a book whose chain does not hold is not moved, and the other place stays empty', async () => {
  const from = await opened(await filePlace())
  await fullStore(from)
  const { rows } = from
  from.rows = async (...page) =>
    (await rows(...page)).map((row) =>
      row.seq === 7 ? { ...row, body: row.body.replace('"brix":5', '"brix":6') } : row,
    )
  const snapshot = from.snapshot
  onTestFinished(() => {
    from.snapshot = snapshot
  })
  from.snapshot = (work) => work(from)
  const to = await opened(await filePlace())
  await expect(moveStore(from, to)).rejects.toMatchObject({ code: 'damaged-store' })
  expect(await to.head()).toMatchObject({ seq: 0 })
  expect(await to.countThings()).toBe(0)
})

test('what is written while a book moves is not torn: the move is of one moment', async () => {
  const [from, to] = [await opened(await filePlace()), await opened(await postgresPlace())]
  await fullStore(from)
  const book = openBook(from, () => testNow)
  let writing = true
  const writer = (async () => {
    for (let n = 100; writing; n++) await book.put(testReading(n))
  })()
  const { entries } = await moveStore(from, to)
  writing = false
  await writer
  expect(entries).toBeGreaterThanOrEqual(33)
  expect(entries).toBeLessThanOrEqual((await from.head()).seq)
  expect((await to.head()).seq).toBe(entries)
})
