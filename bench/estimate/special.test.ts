import { expect, test } from 'vitest'
import { bookFile, faultsOf, inMemory, openBook, openSqliteStore, sourceOf } from '../../packages/book/src/index.ts'
import type { BenchBook } from './book.ts'
import { calmBook, changeOver, changeOverRunning, contradictory, instrumentOff } from './special.ts'

const all = [
  instrumentOff(),
  instrumentOff({ sumps: 6, roundsAfter: 2 }),
  instrumentOff({ sumps: 10, roundsAfter: 1, offset: -0.4 }),
  changeOver(),
  changeOverRunning(),
  calmBook(),
  ...Object.values(contradictory).map((make) => make()),
].map((special) => ({ ...special, title: special.story }))

test.each(all)('the import takes it: $title', async ({ book }) => {
  const parsed = bookFile.safeParse(book)
  expect(parsed.success ? [] : faultsOf(parsed.error, book)).toEqual([])
  const store = await openSqliteStore(inMemory)
  try {
    const sumpbook = openBook(store, () => new Date('2025-06-01T00:00:00Z'))
    const report = await sumpbook.importFile(sourceOf('special.json', Buffer.from(JSON.stringify(book))))
    expect(report).toMatchObject({ warnings: [] })
  } finally {
    await store.close()
  }
})

const brixOn = (book: BenchBook, ids: string[]) => ids.map((id) => book.entries.find((entry) => entry.id === id)!.brix!)

test('on the round that is off every sump reads as much higher, and on no other', () => {
  const [off, right] = [instrumentOff({ roundsAfter: 1 }), instrumentOff({ roundsAfter: 1, offset: 0 })]
  const { entries } = off.expected
  expect(entries).toHaveLength(8)
  const higher = brixOn(off.book, entries).map((brix, i) => brix - brixOn(right.book, entries)[i]!)
  for (const by of higher) expect(Math.abs(by - 0.4)).toBeLessThan(0.001)
  const others = (book: BenchBook) => book.entries.filter(({ id }) => !entries.includes(id))
  expect(others(off.book)).toEqual(others(right.book))
})

test.each([
  [0, '2025-05-26T12:00:00.000Z'],
  [1, '2025-05-29T12:00:00.000Z'],
  [2, '2025-06-02T12:00:00.000Z'],
])('with %d rounds after it the book is asked at noon of the last', (roundsAfter, noon) => {
  const { book, atMs } = instrumentOff({ roundsAfter })
  expect(new Date(atMs).toISOString()).toBe(noon)
  expect(atMs - Date.parse(book.entries.at(-1)!.at)).toBeLessThan(86_400_000 / 4)
})

test('a quiet sump is kept near its target', () => {
  const { expected, book } = instrumentOff({ sumps: 6 })
  for (const { id, fluid } of book.sumps) {
    const { target } = book.fluids.find((one) => one.id === fluid)!.limits.concentration
    expect(Math.abs(expected.concentration[id]!.value - target)).toBeLessThan(0.2)
  }
})

test('seven weeks after the change-over three fifths of the heel are left, and the new factor alone is wrong', () => {
  // Each day (194/200)^(1/3) = 0.98990 stays: 49 days 0.6081, of 1.6 L a 0.973 L; of b 10.8 · 0.6081 + 0.12 · (1 − 0.6081) / 0.01010
  // = 6.567 + 4.656 = 11.22 L; together 12.20 L in 200 L = 6.10 %.
  const { expected } = changeOverRunning()
  expect(expected.concentration.value).toBeGreaterThan(6.08)
  expect(expected.concentration.value).toBeLessThan(6.12)
  expect(expected.byNewFactorAlone - expected.concentration.value).toBeGreaterThan(0.5)
})

test('a contradiction stands in the book of its sump only', () => {
  const calm = calmBook().book.entries.filter(({ sump }) => sump === 's2')
  for (const make of Object.values(contradictory)) {
    const { book, expected } = make()
    const own = book.entries.filter(({ sump }) => sump === expected.undisturbed)
    expect(own.map(({ at, kind, volume, brix }) => ({ at, kind, volume, brix }))).toEqual(
      calm.map(({ at, kind, volume, brix }) => ({ at, kind, volume, brix })),
    )
  }
})
