import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { entryPage } from './one-entry.ts'
import { quarantine } from './quarantine.ts'

const envelope = { person: 'p1', device: null, clockAheadMs: null }
const held = { envelope, hold: 'from a closed account' }

async function shopBook() {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop()), testNow)
  return { store, book: openBook(store, () => testNow) }
}

test('what is held is taken exactly once, and counts nowhere', async () => {
  const { store, book } = await shopBook()
  const put = async (entry: unknown) => (await book.putMany([entry], [held]))[0]!
  expect(await put(testReading(1))).toMatchObject({ status: 'added', quarantine: 'from a closed account' })
  expect(await put(testReading(1))).toMatchObject({ status: 'same', quarantine: 'from a closed account' })
  expect(await put(testReading(1, { brix: 6 }))).toMatchObject({ status: 'conflict' })
  expect(await store.head()).toMatchObject({ seq: 0 })
  expect(await quarantine(store)).toMatchObject([{ id: testId(1), by: 'p1', waitsFor: 'keeper' }])
  expect(await entryPage(store, testId(1))).toMatchObject({ seq: null, quarantine: 'from a closed account' })
})

const verdict = (n: number, answer: string) => ({
  id: testId(n),
  at: '2026-03-03T09:50:00Z',
  kind: 'verdict',
  entries: [testId(1)],
  answer,
})

test('a verdict “let in” brings it into the journal with the envelope it came in', async () => {
  const { store, book } = await shopBook()
  await book.putMany([testReading(1)], [held])
  await book.put(verdict(2, 'not sure'))
  expect(await quarantine(store)).toHaveLength(1)
  await book.put(verdict(3, 'let in'))
  expect(await quarantine(store)).toEqual([])
  expect(await entryPage(store, testId(1))).toMatchObject({
    seq: 3,
    quarantine: null,
    envelope: { person: 'p1', heldSince: testNow.toISOString() },
  })
  expect((await book.putMany([testReading(1)], [held]))[0]).toMatchObject({ status: 'same', quarantine: null })
  await book.put(verdict(4, 'let in'))
  expect(await store.head()).toMatchObject({ seq: 4 })
})

test('a void sets it aside: it stays out, and is still there to be seen', async () => {
  const { store, book } = await shopBook()
  await book.putMany([testReading(1)], [held])
  const aside = { id: testId(2), at: '2026-03-03T09:50:00Z', kind: 'void', entry: testId(1), reason: 'not ours' }
  await book.put(aside)
  expect(await quarantine(store)).toEqual([])
  expect(await store.head()).toMatchObject({ seq: 1 })
  expect(await entryPage(store, testId(1))).toMatchObject({
    quarantine: 'from a closed account; it was set aside',
    withdrawn: true,
    voids: [{ id: testId(2), reason: 'not ours' }],
  })
})

test('an entry of an unknown sump waits for its set-up, one of an unknown kind for a newer version', async () => {
  const { store, book } = await shopBook()
  await book.put(testReading(1, { sump: 's9' }))
  await book.put({ id: testId(2), at: '2026-03-03T09:00:00Z', kind: 'centrifuged', sump: 's1' })
  await book.put(testReading(3))
  expect((await quarantine(store)).map(({ id, waitsFor }) => [id, waitsFor]).sort()).toEqual([
    [testId(1), 'set-up'],
    [testId(2), 'newer version'],
  ])
  const setup = { id: testId(4), at: '2026-03-01T09:00:00Z', kind: 'setup', about: { kind: 'sump', id: 's9' } }
  await book.put({ ...setup, changes: { name: 'Mill 9', fluid: 'f1' } })
  expect((await quarantine(store)).map(({ id }) => id)).toEqual([testId(2)])
})

test('a clock that runs ahead is corrected in the envelope, never in the entry', async () => {
  const { store, book } = await shopBook()
  // The phone shows 12:00 where it is 10:00: two hours, 7 200 000 ms, ahead.
  const entry = testReading(1, { at: '2026-03-03T12:00:00Z', recordedAt: '2026-03-03T12:00:00Z' })
  expect((await book.putMany([entry]))[0]).toMatchObject({ status: 'refused', confirmable: true })
  const note = { envelope: { ...envelope, clockAheadMs: 7_200_000 }, hold: null }
  expect((await book.putMany([entry], [note]))[0]).toMatchObject({ status: 'added' })
  expect(await entryPage(store, testId(1))).toMatchObject({
    entry: { at: '2026-03-03T12:00:00Z', recordedAt: '2026-03-03T12:00:00Z' },
    envelope: { clockAheadMs: 7_200_000 },
    writtenAt: '2026-03-03T10:00:00.000Z',
    receivedAt: '2026-03-03T10:00:00.000Z',
  })
})
