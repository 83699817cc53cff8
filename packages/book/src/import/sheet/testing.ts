/** What tests of importing a sheet share: a small shop, its sheets, and taking them in. */
import { readFileSync } from 'node:fs'
import { expect } from 'vitest'
import { BookError } from '../../errors.ts'
import type { Entry } from '../../schema/entries/index.ts'
import type { Fluid, Sump } from '../../schema/things/index.ts'
import type { SheetMap } from '../sheet-types.ts'
import { importSheet } from './import-sheet.ts'
import { type MemoryBook, memoryBook } from './memory-book.ts'
import { type SheetSource, sourceOf } from './sheet-source.ts'

/** A sheet as it lies beside these tests. */
export const fixture = (name: string) => sourceOf(name, readFileSync(new URL(`fixtures/${name}`, import.meta.url)))
export const csv = (text: string) => sourceOf('log.csv', new TextEncoder().encode(text))

export const fluid = {
  id: 'blend-40',
  name: 'Blend 40',
  class: 'semi-synthetic',
  brixFactor: 1.6,
  limits: { concentration: { low: 6, target: 8, high: 10 } },
} satisfies Fluid
export const mill7: Sump = { id: 'm7', name: 'Mill 7', fluid: 'blend-40', fillVolume: 240 }
export const lathe2: Sump = { id: 'l2', name: 'Lathe 2', fluid: 'blend-40', fillVolume: 350, machines: ['Big lathe'] }

export const metric = (over: Parameters<typeof memoryBook>[0] = {}) =>
  memoryBook({ fluids: [fluid], sumps: [mill7, lathe2], ...over })
export const us = (over: Parameters<typeof memoryBook>[0] = {}) =>
  metric({ units: 'us', timeZone: 'America/Chicago', ...over })

export const preview = (source: SheetSource, map: SheetMap, book: MemoryBook) =>
  importSheet(source, map, book, { preview: true })
export const take = (source: SheetSource, map: SheetMap, book: MemoryBook) =>
  importSheet(source, map, book, { preview: false })

export async function refused(source: SheetSource, map: SheetMap, book: MemoryBook): Promise<BookError> {
  const before = book.writes
  const error: unknown = await take(source, map, book).then(
    () => new Error('it was taken in'),
    (reason) => reason,
  )
  expect(error).toBeInstanceOf(BookError)
  expect((error as BookError).code).toBe('refused-input')
  expect(book.writes).toBe(before)
  return error as BookError
}

/** Entries without ids, by what a person would compare. */
export const plainly = (entries: readonly Entry[]) => entries.map(({ id: _id, typed: _typed, ...rest }) => rest)
