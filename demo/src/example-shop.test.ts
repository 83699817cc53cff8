import { expect, test } from 'vitest'
import { z } from 'zod'
import { bookFile } from '../../packages/book/src/schema/book-file.ts'
import { entry } from '../../packages/book/src/schema/entries/index.ts'
import { exampleShop } from './index.ts'

const until = '2026-10-07T10:00:00+02:00'
const book = exampleShop({ until })

test('the book is a valid book file', () => {
  const result = bookFile.safeParse(book)
  expect(result.error?.issues.slice(0, 5) ?? []).toEqual([])
})

test('no field of the book is unknown to the format', () => {
  const { entries, ...rest } = book
  expect(unknownFields(bookFile, rest, '')).toEqual([])
  const kinds = new Map(entry.options.map((option) => [option.shape.kind.value as string, option]))
  for (const one of entries) expect(unknownFields(kinds.get(one.kind)!, one, one.kind)).toEqual([])
  expect(unknownFields(kinds.get('reading')!, { kind: 'reading', brixx: 3 }, 'reading')).toEqual(['reading/brixx'])
})

test('the same seed and end give the same bytes, another seed another shop', () => {
  expect(JSON.stringify(exampleShop({ seed: 1, until }))).toBe(JSON.stringify(book))
  expect(JSON.stringify(exampleShop({ seed: 2, until }))).not.toBe(JSON.stringify(book))
})

test('three to six thousand entries tell a year and a fortnight', () => {
  expect(book.entries.length).toBeGreaterThan(3000)
  expect(book.entries.length).toBeLessThan(6000)
  const first = Math.min(...book.entries.map(({ at }) => Date.parse(at)))
  expect((Date.parse(until) - first) / 86_400_000).toBeGreaterThan(375)
})

test('every id is there once, and whatever an entry points at is in the book', () => {
  const ids = new Set(book.entries.map(({ id }) => id))
  expect(ids.size).toBe(book.entries.length)
  const named = (list: { id: string }[]) => new Set(list.map(({ id }) => id))
  const places: [string, Set<string>][] = [
    ['sump', named(book.sumps)],
    ['water', named(book.waters)],
    ['fluid', named(book.fluids)],
    ['instrument', named(book.instruments)],
    ['answers', ids],
    ['entry', ids],
  ]
  for (const one of book.entries) {
    if (one.kind === 'transfer') expect(places[0]![1].has(one.to as string)).toBe(true)
    for (const [field, known] of places) {
      if (one[field] !== undefined) expect(known.has(one[field] as string), `${field} ${one[field]}`).toBe(true)
    }
  }
})

test('entries stand in the order in which they were written down, none before it happened or after the end', () => {
  const written = book.entries.map(({ recordedAt }) => Date.parse(recordedAt))
  expect(written).toEqual([...written].sort((a, b) => a - b))
  for (const { at, recordedAt } of book.entries) {
    expect(Date.parse(at)).toBeLessThanOrEqual(Date.parse(recordedAt))
    expect(Date.parse(recordedAt)).toBeLessThanOrEqual(Date.parse(until))
  }
})

test('people stand in it by what they are in the shop, nobody by a name', () => {
  expect([...new Set(book.entries.map(({ by }) => by))].sort()).toEqual(['Early shift', 'Fluid keeper', 'Late shift'])
})

test('nobody reads on weekends, holidays and in shutdowns', () => {
  const days = new Set(book.entries.filter(({ kind }) => kind === 'reading').map(({ at }) => at.slice(0, 10)))
  for (const day of days) expect(new Date(`${day}T12:00:00Z`).getUTCDay() % 6, day).not.toBe(0)
  expect(book.shop.shutdowns).toEqual([
    { from: '2025-12-24', to: '2026-01-01' },
    { from: '2026-08-03', to: '2026-08-16' },
  ])
  for (const { from, to } of book.shop.shutdowns) {
    for (const day of days) expect(day >= from && day <= to, day).toBe(false)
  }
  for (const holiday of ['2025-10-03', '2026-04-03', '2026-04-06', '2026-05-01', '2026-05-14'])
    expect(days.has(holiday)).toBe(false)
})

test('it holds all kinds of entries that a journal can hold', () => {
  const kinds = new Set(book.entries.map(({ kind }) => kind))
  const absent = entry.options.map(({ shape }) => shape.kind.value as string).filter((kind) => !kinds.has(kind))
  expect(absent).toEqual([])
})

test('a decimal slip is withdrawn with its reason and read again, another slip stays', () => {
  const withdrawal = book.entries.find(({ kind }) => kind === 'void')!
  const wrong = book.entries.find(({ id }) => id === withdrawal.entry)!
  const right = book.entries.filter(
    ({ sump, at, kind }) => sump === wrong.sump && at === wrong.at && kind === 'reading',
  )
  expect(withdrawal.reason).toMatch(/comma/)
  expect(right.map(({ brix }) => brix)).toEqual([wrong.brix, (wrong.brix as number) / 10])
})

test('some top-ups are to the mark without an amount, some are counted by the meter, most in litres', () => {
  const additions = book.entries.filter(({ kind, additive }) => kind === 'addition' && additive === undefined)
  const toMark = additions.filter((one) => one.toMark === true)
  expect(toMark.length).toBeGreaterThan(20)
  expect(toMark.every(({ volume }) => volume === undefined)).toBe(true)
  const counts = additions.flatMap(({ meter }) => (meter === undefined ? [] : [(meter as { count: number }).count]))
  expect(counts).toEqual([...counts].sort((a, b) => a - b))
  expect(counts.length).toBeGreaterThan(20)
  expect(additions.filter(({ volume }) => volume !== undefined).length).toBeGreaterThan(additions.length / 2)
})

test('a mill is topped up with tap water first and with deionised water later', () => {
  const waters = book.entries
    .filter(({ kind, sump, additive }) => kind === 'addition' && sump === 'mill7' && additive === undefined)
    .map(({ water }) => water)
  const first = waters.indexOf('deionised')
  expect(first).toBeGreaterThan(5)
  expect(waters.slice(0, first).every((water) => water === 'tap')).toBe(true)
  expect(waters.slice(first).every((water) => water === 'deionised')).toBe(true)
})

/** Where a value has fields that its schema does not name, however loose it is. */
function unknownFields(schema: z.core.$ZodType, value: unknown, at: string): string[] {
  if (value === undefined || value === null) return []
  if (schema instanceof z.ZodOptional) return unknownFields(schema.unwrap(), value, at)
  if (schema instanceof z.ZodArray && Array.isArray(value)) {
    return value.flatMap((one, i) => unknownFields(schema.element, one, `${at}/${i}`))
  }
  if (!(schema instanceof z.ZodObject) || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([field, inner]) => {
    const known = schema.shape[field]
    return known === undefined ? [`${at}/${field}`] : unknownFields(known, inner, `${at}/${field}`)
  })
}
