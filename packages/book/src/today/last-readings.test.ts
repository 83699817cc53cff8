import { expect, test } from 'vitest'
import type { Book } from '../book.ts'
import { openBook } from '../book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'

/** A book of the small shop with a clock that can be put on, and what was read last of its sump by its page and by the list of all. */
async function readBook() {
  const store = await emptyStore()
  let now = testNow
  const book = openBook(store, () => now)
  await importShop(book)
  await book.put(testReading(1, { at: '2026-03-02T08:00:00Z', brix: 4 }))
  const read = async () => {
    const [all] = await book.sumps()
    const [alone] = await book.sumps({ sump: 's1' })
    expect(all!.lastStrength).toEqual(alone!.lastStrength)
    expect(all!.lastLevel).toEqual(alone!.lastLevel)
    return [all!.lastStrength?.text ?? null, all!.lastStrength?.concentration ?? null, all!.lastLevel?.text ?? null]
  }
  const at = (text: string) => {
    now = new Date(text)
  }
  return { book, read, at }
}

async function importShop(book: Book): Promise<void> {
  await book.importFile({
    name: 'shop.json',
    async *open() {
      yield new TextEncoder().encode(JSON.stringify(smallShop()))
    },
  })
}

test('what arrives is read, however late it comes, and what is withdrawn no longer', async () => {
  const { book, read } = await readBook()
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '180 L'])
  await book.put(testReading(2, { at: '2026-03-02T09:00:00Z', brix: 4.5, volume: 170 }))
  expect(await read()).toEqual(['4.5 °Brix', 7.2, '170 L'])
  // Of the day before, and only its level.
  const { brix: _, ...level } = testReading(3, { at: '2026-03-02T08:30:00Z', volume: 175 })
  await book.put(level)
  expect(await read()).toEqual(['4.5 °Brix', 7.2, '170 L'])
  await book.put({ id: testId(4), at: '2026-03-03T09:00:00Z', kind: 'void', entry: testId(2) })
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '175 L'])
})

test('an entry that is dated ahead counts from its time on, and not before', async () => {
  const { book, read, at } = await readBook()
  at('2026-03-04T10:00:00Z')
  await book.put(testReading(2, { at: '2026-03-04T09:00:00Z', brix: 5 }))
  at('2026-03-03T10:00:00Z')
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '180 L'])
  at('2026-03-04T08:00:00Z')
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '180 L'])
  at('2026-03-04T09:00:00Z')
  expect(await read()).toEqual(['5.0 °Brix', 8, '180 L'])
  at('2026-03-04T08:00:00Z')
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '180 L'])
})

test('a fluid that is set up otherwise, at once or from a day on, is read by what holds', async () => {
  const { book, read, at } = await readBook()
  expect(await read()).toEqual(['4.0 °Brix', 6.4, '180 L'])
  const setup = (n: number, from: string, fluid: string) => ({
    id: testId(n),
    at: '2026-03-03T09:00:00Z',
    kind: 'setup',
    about: { kind: 'fluid', id: fluid },
    from,
    changes: { brixFactor: 2 },
    was: { brixFactor: 1.6 },
  })
  await book.put(setup(5, '2026-03-01', 'f1'))
  expect(await read()).toEqual(['4.0 °Brix', 8, '180 L'])
  await book.put({
    id: testId(6),
    at: '2026-03-03T09:00:00Z',
    kind: 'setup',
    about: { kind: 'sump', id: 's1' },
    from: '2026-03-10',
    changes: { fluid: 'unknown' },
    was: { fluid: 'f1' },
  })
  expect(await read()).toEqual(['4.0 °Brix', 8, '180 L'])
  at('2026-03-11T10:00:00Z')
  expect(await read()).toEqual(['4.0 °Brix', null, '180 L'])
  at('2026-03-03T10:00:00Z')
  expect(await read()).toEqual(['4.0 °Brix', 8, '180 L'])
})

test('between two changes nothing is read again', async () => {
  const { book, read, at } = await readBook()
  await read()
  let asked = 0
  const { entries } = book.store
  book.store.entries = (query) => {
    if (query.kinds?.includes('reading') === true && query.sump === undefined) asked++
    return entries.call(book.store, query)
  }
  at('2026-03-03T11:00:00Z')
  await book.sumps()
  expect(asked).toBe(0)
  await book.put(testReading(2, { at: '2026-03-03T10:30:00Z' }))
  await book.sumps()
  expect(asked).toBeGreaterThan(0)
})
