import { expect, test } from 'vitest'
import { type Book, openBook } from '../book.ts'
import { sourceOf } from '../import/sheet/sheet-source.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import type { JournalFilter } from './journal-filter.ts'
import { journalPage } from './journal-page.ts'

async function bookWith(...entries: object[]): Promise<Book> {
  const book = openBook(await emptyStore(), () => testNow)
  const sumps = ['s1', 's2'].map((id) => ({ id, name: id, fluid: 'f1', fillVolume: 200 }))
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(smallShop({ sumps })))))
  const arrivals = await book.putMany(entries)
  expect(arrivals.map(({ status }) => status)).toEqual(entries.map(() => 'added'))
  return book
}
const look = (n: number, more: { at: string; by?: string; note?: string }) => ({
  id: testId(n),
  kind: 'observation',
  sump: 's1',
  ...more,
})
const idsOf = async ({ store }: Book, filter: JournalFilter) =>
  (await journalPage(store, { limit: 50, filter })).entries.map(({ id }) => Number(id.slice(-4)))

test('lines of one sump, of some kinds, by one person, with some words: all that is named must hold', async () => {
  const at = (hour: number) => `2026-03-02T0${hour}:00:00Z`
  const book = await bookWith(
    testReading(1, { at: at(1), by: 'MK' }),
    testReading(2, { at: at(2), by: 'mk ', sump: 's2' }),
    look(3, { at: at(3), by: 'JP', note: 'Foam under the Lid' }),
    look(4, { at: at(4), note: 'foam again' }),
    { id: testId(5), at: at(5), kind: 'void', sump: 's1', entry: testId(4), reason: 'wrong lid' },
  )
  expect(await idsOf(book, {})).toEqual([5, 4, 3, 2, 1])
  expect(await idsOf(book, { sump: 's1' })).toEqual([5, 4, 3, 1])
  expect(await idsOf(book, { kinds: ['reading', 'void'] })).toEqual([5, 2, 1])
  expect(await idsOf(book, { kinds: [] })).toEqual([5, 4, 3, 2, 1])
  expect(await idsOf(book, { by: ['Mk'] })).toEqual([2, 1])
  expect(await idsOf(book, { by: ['MK', 'JP'], sump: 's1' })).toEqual([3, 1])
  expect(await idsOf(book, { words: 'LID foam' })).toEqual([4, 3])
  expect(await idsOf(book, { words: 'lid', kinds: ['observation'], by: ['JP'] })).toEqual([3])
  expect(await idsOf(book, { words: 'rust' })).toEqual([])
})

test('days are those of the shop, the last one included; a last day before the first is refused', async () => {
  // Berlin is one hour ahead of UTC in winter: 2 March lasts from 23:00 to 23:00 UTC.
  const book = await bookWith(
    testReading(1, { at: '2026-03-01T22:59:59.999Z' }),
    testReading(2, { at: '2026-03-01T23:00:00Z' }),
    testReading(3, { at: '2026-03-02T22:59:59.999Z' }),
    testReading(4, { at: '2026-03-02T23:00:00Z' }),
  )
  expect(await idsOf(book, { from: '2026-03-02', to: '2026-03-02' })).toEqual([3, 2])
  expect(await idsOf(book, { from: '2026-03-02' })).toEqual([4, 3, 2])
  expect(await idsOf(book, { to: '2026-03-02' })).toEqual([3, 2, 1])
  await expect(idsOf(book, { from: '2026-03-02', to: '2026-03-01' })).rejects.toMatchObject({
    code: 'refused-input',
    faults: [{ pointer: '/to' }],
  })
})

test('page after page gives every line that matches once, whatever lies between', async () => {
  const entries = Array.from({ length: 60 }, (_, n) =>
    look(n + 1, { at: `2026-03-01T10:${String(n).padStart(2, '0')}:00Z`, note: n % 7 === 0 ? 'foam' : 'dry' }),
  )
  const { store } = await bookWith(...entries)
  for (const filter of [{ words: 'foam' }, { sump: 's1' }]) {
    const found: number[] = []
    let cursor: string | undefined
    for (;;) {
      const { entries: page, next } = await journalPage(store, { limit: 4, cursor, filter })
      expect(page.length).toBeLessThanOrEqual(4)
      found.push(...page.map(({ id }) => Number(id.slice(-4))))
      if (next === null) break
      cursor = next
    }
    const all = Array.from({ length: 60 }, (_, n) => 60 - n)
    expect(found).toEqual('words' in filter ? all.filter((n) => (n - 1) % 7 === 0) : all)
  }
})

test('who looks for something rare in a long journal is told how far back was looked, and goes on from there', async () => {
  const first = Date.parse('2020-01-01T00:00:00Z')
  const entries = Array.from({ length: 2100 }, (_, n) =>
    look(n + 1, { at: new Date(first + n * 60_000).toISOString(), ...(n === 3 ? { note: 'swarf' } : {}) }),
  )
  const { store } = await bookWith(...entries)
  const page = await journalPage(store, { limit: 50, filter: { words: 'swarf' }, lookThrough: 2000 })
  // 2,000 of them lie between entry 101 and the last.
  expect(page).toMatchObject({ entries: [], lookedBackTo: entries[100]!.at })
  const rest = await journalPage(store, { limit: 50, cursor: page.next!, filter: { words: 'swarf' } })
  expect(rest).toMatchObject({ entries: [{ id: testId(4) }], next: null, lookedBackTo: null })
})

test('a cursor that no page gave is refused', async () => {
  const { store } = await bookWith()
  await expect(journalPage(store, { limit: 4, cursor: 'x' })).rejects.toMatchObject({
    faults: [{ pointer: '/cursor' }],
  })
})
