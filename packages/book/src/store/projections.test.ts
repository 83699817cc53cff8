import { describe, expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { sourceOf } from '../import/sheet/sheet-source.ts'
import { smallShop, testNow, testReading } from '../testing.ts'
import { opened, places } from './testing.ts'

describe.each(places)('projections, %s', (_, place) => {
  const row = (day: number, body = `{"day":${day}}`) => ({ key: 'engine', day, body })

  test('what is kept under a name is replaced as a whole, other names stay', async () => {
    const store = await opened(await place())
    await store.write(async (journal) => {
      await journal.keepProjections('one', [row(3), row(-2)])
      await journal.keepProjections('other', [row(7)])
    })
    expect(await store.projections('one')).toEqual([row(-2), row(3)])
    await store.write((journal) => journal.keepProjections('one', [row(3, '[]')]))
    expect(await store.projections('one')).toEqual([row(3, '[]')])
    expect(await store.projections('other')).toEqual([row(7)])
    expect(await store.projections('none')).toEqual([])
  })

  test('what is kept moves neither the chain nor its seals', async () => {
    const store = await opened(await place())
    const before = await store.sealedHead()
    await store.write((journal) => journal.keepProjections('one', [row(1)]))
    expect(await store.sealedHead()).toEqual(before)
  })

  test('a book that settled goes on from there, and answers the same', async () => {
    const store = await opened(await place())
    const book = openBook(store, () => testNow)
    const entries = [1, 2, 3].map((n) => testReading(n, { at: `2026-02-0${n}T09:30:00+01:00` }))
    await book.importFile(sourceOf('shop.json', new TextEncoder().encode(JSON.stringify(smallShop({ entries })))))
    const before = JSON.stringify(await book.estimate())
    await book.settle()
    expect((await store.projections('estimate')).length).toBeGreaterThan(0)
    expect(JSON.stringify(await openBook(store, () => testNow).estimate())).toBe(before)
  })
})
