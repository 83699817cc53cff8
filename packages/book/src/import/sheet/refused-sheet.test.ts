import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BookError } from '../../errors.ts'
import type { Sump } from '../../schema/things/index.ts'
import { importSheet } from './import-sheet.ts'
import { sourceOf } from './sheet-source.ts'
import { csv, fixture, metric, mill7, preview, refused, take } from './testing.ts'

describe('a faulty sheet', () => {
  test('is refused whole, every fault named by row, column, value and reason', async () => {
    const book = metric()
    const { faults, message } = await refused(fixture('faulty.csv'), {}, book)
    expect(faults.map(({ row, column, found, expected }) => [row, column, found, expected])).toEqual([
      [3, 'Date', '"31.02.2026"', 'a day that the calendar has'],
      [4, 'Brix', '"about 3"', 'a number, or nothing'],
      [5, 'pH', '"19"', 'at most 14'],
      [6, 'Machine', 'nothing', 'the machine that the row is about'],
      [7, 'Date', 'nothing', expect.stringContaining('2026-10-05')],
      [8, 'Brix', '"96"', 'at most 95 °Brix'],
      [9, 'Level (L)', '"-20 L"', 'at least 0 L'],
      [10, 'Level (L)', '"200 furlongs"', expect.stringContaining('US gal')],
      [11, 'Level (L)', '"330 L"', 'at most the brim of Mill 7, 300 L'],
    ])
    expect(faults[2]?.pointer).toBe('/rows/5/pH')
    expect(message).toContain('row 3')
    expect(book.entries).toEqual([])
  })

  test('several faults of one row are all named', async () => {
    const { faults } = await refused(csv('Date,Machine,Brix,pH\n2026-13-05,,x,19\n'), {}, metric())
    expect(faults.map(({ pointer }) => pointer).toSorted()).toEqual([
      '/rows/2/Brix',
      '/rows/2/Date',
      '/rows/2/Machine',
      '/rows/2/pH',
    ])
  })

  test('a level up to 5 % above the brim is accepted and told, one above is a fault', async () => {
    // The brim of Mill 7 is 1.25 × 240 = 300 L, 5 % above it 315 L.
    const level = (litres: number) => csv(`Date,Machine,Level (L)\n2026-10-05,Mill 7,${litres}\n`)
    expect((await preview(level(300), {}, metric())).warnings).toEqual([])
    expect((await preview(level(315), {}, metric())).warnings.join()).toContain('above the brim')
    expect((await refused(level(316), {}, metric())).faults).toMatchObject([{ row: 2, column: 'Level (L)' }])
  })

  test('a level in millimetres is held against the brim by its dip table', async () => {
    const dipped: Sump = {
      ...mill7,
      dipTable: [
        [0, 0],
        [500, 400],
      ],
    }
    const level = (mm: number) => csv(`Date,Machine,Level (mm)\n2026-10-05,Mill 7,${mm}\n`)
    expect((await take(level(375), {}, metric({ sumps: [dipped] }))).counts.entries).toBe(1)
    await refused(level(400), {}, metric({ sumps: [dipped] }))
  })

  test('a preview tells it all and writes nothing', async () => {
    const book = metric()
    const report = await preview(fixture('faulty.csv'), {}, book)
    expect(report.faults).toHaveLength(9)
    expect(report.counts).toMatchObject({ rows: 10, new: 1, refused: 9 })
    expect(book.writes).toBe(0)
  })

  test.each([
    ['a sheet without a date', 'Machine,Brix\nMill 7,3.4\n'],
    ['no table at all', 'just some words\nand more of them\n'],
    ['a sheet without readings', 'Date,Machine,Shift\n2026-10-05,Mill 7,1\n'],
    ['an unknown unit in a heading', 'Date,Machine,Level (furlongs)\n2026-10-05,Mill 7,3\n'],
    ['two columns for one thing', 'Date,Machine,Brix,Refractometer\n2026-10-05,Mill 7,3,4\n'],
    ['a strength above 100 %', 'Date,Machine,Added (L),Added %\n2026-10-05,Mill 7,3,101\n'],
    ['a water the book does not have', 'Date,Machine,Added (L),Water type\n2026-10-05,Mill 7,3,spring\n'],
    ['words for the pumps', 'Date,Machine,Level (L),Pumps\n2026-10-05,Mill 7,200,maybe\n'],
  ])('%s is refused', async (_, text) => {
    expect(
      (await refused(csv(text), {}, metric({ waters: [{ id: 'tap', name: 'Tap' }] }))).faults.length,
    ).toBeGreaterThan(0)
  })
})

test('a map with a field that is none is refused with its pointer', async () => {
  const { faults } = await refused(
    csv('Date,Machine,Brix\n'),
    { columns: { Brix: { field: 'brixx' } } } as never,
    metric(),
  )
  expect(faults).toMatchObject([{ pointer: '/columns/Brix/field' }])
})

test('whatever bytes come as a CSV, they are taken in or refused, and a refusal writes nothing', async () => {
  const piece = fc.oneof(
    fc.constantFrom(
      'Date',
      'Machine',
      'Brix',
      'pH',
      'Mill 7',
      'Level (gal)',
      'Added',
      ',',
      ';',
      '\t',
      '\n',
      '\r\n',
      '"',
      '3,4',
      '1.234',
      '2026-10-05',
      '31.02.2026',
      '<25',
      '1e400',
      '∞',
      '-',
      '\u0000',
      '\uFEFF',
      'n/a',
    ),
    fc.string({ unit: 'binary', maxLength: 6 }),
  )
  const headed = fc
    .array(piece, { maxLength: 60 })
    .map((pieces) => `Date,Machine,Brix,pH,Hardness,Added\n${pieces.join('')}`)
  const soup = fc.oneof(
    fc.uint8Array({ maxLength: 300 }),
    fc.array(piece, { maxLength: 80 }).map((pieces) => new TextEncoder().encode(pieces.join(''))),
    headed.map((text) => new TextEncoder().encode(text)),
  )
  await fc.assert(
    fc.asyncProperty(soup, fc.boolean(), async (bytes, onlyPreview) => {
      const book = metric()
      try {
        await importSheet(sourceOf('soup.csv', bytes), {}, book, { preview: onlyPreview })
      } catch (error) {
        if (!(error instanceof BookError)) throw error
        expect(error.faults.length).toBeGreaterThan(0)
        expect(book.writes).toBe(0)
      }
    }),
    { numRuns: 500 },
  )
})
