import { expect, test } from 'vitest'
import { bookFile, faultsOf } from '../../../packages/book/src/index.ts'
import { yearsOfEntries } from './years-of-entries.ts'

test('a book has a charge for each sump and two entries for each look, spread over its years', () => {
  const { entries, sumps } = yearsOfEntries({ sumps: 7, years: 3, looksAYear: 50 })
  expect(entries).toHaveLength(7 + 7 * 3 * 50 * 2)
  expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length)
  for (const { id } of sumps) expect(entries.filter(({ sump }) => sump === id)).toHaveLength(1 + 3 * 50 * 2)
  const days = (Date.parse(entries.at(-1)!.at) - Date.parse(entries[0]!.at)) / 86_400_000
  expect(days).toBeGreaterThan(3 * 365 - 10)
  expect(days).toBeLessThan(3 * 365 + 10)
  expect(entries.map(({ at }) => at)).toEqual(entries.map(({ at }) => at).toSorted())
})

test('the import takes it', () => {
  const book = yearsOfEntries({ sumps: 5, years: 2, looksAYear: 65 })
  const parsed = bookFile.safeParse(book)
  expect(parsed.success ? [] : faultsOf(parsed.error, book)).toEqual([])
})
