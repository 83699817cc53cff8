import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { type Book, openBook } from './book.ts'
import { sourceOf } from './import/sheet/sheet-source.ts'
import { openSqliteStore } from './store/sqlite/open.ts'
import { emptyBook, smallShop, testId, testNow, testReading } from './testing.ts'

const bookSource = (file: unknown) => sourceOf('shop.json', Buffer.from(JSON.stringify(file)))

async function bookOnDisk(): Promise<Book> {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-book-'))
  const book = openBook(await openSqliteStore(join(folder, 'book.sqlite')), () => testNow)
  onTestFinished(async () => {
    await book.close()
    rmSync(folder, { recursive: true, force: true })
  })
  return book
}

test.each([
  ['in memory', emptyBook],
  ['on disk', bookOnDisk],
])('a file is taken in, or refused with its faults: %s', async (_, open) => {
  const book = await open()
  expect(await book.importFile(bookSource(smallShop()))).toMatchObject({ kind: 'book', counts: { things: 5 } })
  await expect(book.importFile(bookSource({ format: 'other' }))).rejects.toMatchObject({
    code: 'refused-input',
    faults: [{ pointer: '/format' }],
  })
})

test('while a file is taken in, readers go on and writers wait their turn', async () => {
  const book = await bookOnDisk()
  await book.importFile(bookSource(smallShop()))
  const entries = Array.from({ length: 3000 }, (_, i) => testReading(i + 10))
  const importing = book.importFile(bookSource({ ...smallShop(), entries }))
  const written = book.put(testReading(1))
  expect((await book.today({ at: testNow })).items).toHaveLength(1)
  expect((await importing).counts.entries).toBe(3000)
  expect((await written).status).toBe('added')
  expect((await book.store.head()).seq).toBe(3001)
})

test('a thing told by an entry is known to the next', async () => {
  const book = await emptyBook()
  const early = await book.put(testReading(1))
  expect(early.quarantine).not.toBeNull()
  for (const [n, kind, id, changes] of [
    [2, 'fluid', 'f1', { name: 'Semi 1', brixFactor: 1.6 }],
    [3, 'sump', 's1', { name: 'Mill 1', fluid: 'f1', fillVolume: 200 }],
  ] as const) {
    await book.put({ id: testId(n), at: '2026-03-03T09:00:00Z', kind: 'setup', about: { kind, id }, changes })
  }
  expect((await book.put(testReading(4, { volume: 170 }))).quarantine).toBeNull()
  await expect(book.put(testReading(5, { volume: 300 }))).rejects.toMatchObject({ code: 'refused-input' })
  expect((await book.today({ at: testNow })).quarantined).toBe(0)
})

test('the example shop goes only into an empty book', async () => {
  const book = await emptyBook()
  const example = () => JSON.stringify(smallShop())
  expect(await book.isExample()).toBe(false)
  await book.loadExample(example)
  expect(await book.isExample()).toBe(true)
  await expect(book.loadExample(example)).rejects.toMatchObject({ code: 'refused-input' })
})

test('entries that come together are each answered', async () => {
  const book = await emptyBook()
  await book.importFile(bookSource(smallShop()))
  const arrivals = await Promise.all([
    book.put(testReading(1)),
    book.put(testReading(1)),
    book.putMany([testReading(2), testReading(3, { ph: 20 })]),
    book.put(testReading(4, { brix: -1 })).catch((error: Error) => error.message),
  ])
  expect(arrivals).toMatchObject([
    { status: 'added' },
    { status: 'same' },
    [{ status: 'added' }, { status: 'refused' }],
    expect.stringContaining('/brix: found -1, expected at least 0'),
  ])
})

test('what a phone with a clock two minutes ahead has written counts at once, but not at an earlier time asked for', async () => {
  const book = await emptyBook()
  await book.importFile(bookSource(smallShop()))
  await book.put(testReading(1, { at: '2026-03-03T10:02:00Z' }))
  const strengthOf = async (at?: Date) => {
    const { items, calm } = await book.today(at === undefined ? {} : { at })
    return [...items, ...calm][0]!.lastStrength
  }
  expect((await strengthOf())?.concentration).toBeCloseTo(8, 10)
  expect(await strengthOf(testNow)).toBeNull()
})
