import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import writeExcelFile from 'write-excel-file/node'
import { BookError } from '../../errors.ts'
import type { Entry } from '../../schema/entries/index.ts'
import type { Fluid, Sump } from '../../schema/things/index.ts'
import type { SheetMap } from '../sheet-types.ts'
import { importSheet } from './import-sheet.ts'
import { type MemoryBook, memoryBook } from './memory-book.ts'
import { type SheetSource, sourceOf } from './sheet-source.ts'

const fixture = (name: string) => sourceOf(name, readFileSync(new URL(`fixtures/${name}`, import.meta.url)))
const csv = (text: string) => sourceOf('log.csv', new TextEncoder().encode(text))

const fluid = {
  id: 'blend-40',
  name: 'Blend 40',
  class: 'semi-synthetic',
  brixFactor: 1.6,
  limits: { concentration: { low: 6, target: 8, high: 10 } },
} satisfies Fluid
const mill7: Sump = { id: 'm7', name: 'Mill 7', fluid: 'blend-40', fillVolume: 240 }
const lathe2: Sump = { id: 'l2', name: 'Lathe 2', fluid: 'blend-40', fillVolume: 350, machines: ['Big lathe'] }

const metric = (over: Parameters<typeof memoryBook>[0] = {}) =>
  memoryBook({ fluids: [fluid], sumps: [mill7, lathe2], ...over })
const us = (over: Parameters<typeof memoryBook>[0] = {}) =>
  metric({ units: 'us', timeZone: 'America/Chicago', ...over })

const preview = (source: SheetSource, map: SheetMap, book: MemoryBook) =>
  importSheet(source, map, book, { preview: true })
const take = (source: SheetSource, map: SheetMap, book: MemoryBook) =>
  importSheet(source, map, book, { preview: false })

async function refused(source: SheetSource, map: SheetMap, book: MemoryBook): Promise<BookError> {
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
const plainly = (entries: readonly Entry[]) => entries.map(({ id: _id, typed: _typed, ...rest }) => rest)

describe('a wide European sheet', () => {
  const sumps: Sump[] = ['Fräse 1', 'Fräse 2', 'Drehbank 3', 'Schleifmaschine'].map((name, i) => ({
    id: `s${i + 1}`,
    name,
    fluid: 'blend-40',
    fillVolume: 200,
  }))

  test.each(['wide-european.csv', 'wide-european-1252.csv'])('%s gives one reading a filled cell', async (name) => {
    const book = metric({ sumps })
    const report = await take(fixture(name), {}, book)
    expect(report).toMatchObject({ shape: 'wide', dates: 'dmy', decimal: ',', faults: [], questions: [] })
    expect(report.counts).toEqual({
      rows: 5,
      new: 4,
      same: 0,
      corrected: 0,
      blank: 1,
      refused: 0,
      entries: 12,
      things: 0,
    })
    expect(book.entries).toHaveLength(12)
    // Noon in Berlin on 19 October is 10:00 UTC.
    expect(
      book.entries
        .filter(({ at }) => at.startsWith('2026-10-19'))
        .map((one) => [one.at, 'sump' in one && one.sump, 'brix' in one && one.brix, one.by]),
    ).toEqual([
      ['2026-10-19T10:00:00.000Z', 's1', 3.15, 'MW'],
      ['2026-10-19T10:00:00.000Z', 's2', 2.7, 'MW'],
      ['2026-10-19T10:00:00.000Z', 's3', 5.2, 'MW'],
    ])
    expect(book.entries[0]?.typed).toEqual({ at: '05.10.2026', brix: '3,4' })
  })

  test('new machines are asked for their marks, and for nothing the fluid says', async () => {
    const { questions, warnings } = await preview(fixture('wide-european.csv'), {}, metric({ sumps: [] }))
    expect(questions.map(({ pointer }) => pointer)).toEqual(
      ['Fräse 1', 'Fräse 2', 'Drehbank 3', 'Schleifmaschine'].map((name) => `/machines/${name}/fillVolume`),
    )
    expect(warnings.join(' ')).toContain('Blend 40 is taken as the fluid')
  })

  test('a mark that is said to be unknown is an answer', async () => {
    const book = metric({ sumps: [] })
    const report = await take(
      fixture('wide-european.csv'),
      { newSumps: { fillVolume: null }, machines: { 'fräse 1': { fillVolume: 180, id: 'f1' } } },
      book,
    )
    expect(report.counts).toMatchObject({ entries: 12, things: 4 })
    expect(book.sumps).toEqual([
      { id: 'f1', name: 'Fräse 1', machines: ['Fräse 1'], fluid: 'blend-40', fillVolume: 180 },
      { id: 'frase-2', name: 'Fräse 2', machines: ['Fräse 2'], fluid: 'blend-40' },
      { id: 'drehbank-3', name: 'Drehbank 3', machines: ['Drehbank 3'], fluid: 'blend-40' },
      { id: 'schleifmaschine', name: 'Schleifmaschine', machines: ['Schleifmaschine'], fluid: 'blend-40' },
    ])
  })

  test('an empty book is asked for the fluid, its factor, target and band as well, once for all machines', async () => {
    const { questions } = await preview(
      fixture('wide-european.csv'),
      { newSumps: { fillVolume: null } },
      metric({ sumps: [], fluids: [] }),
    )
    expect(questions.map(({ pointer }) => pointer)).toEqual([
      '/fluids/0/name',
      '/fluids/0/brixFactor',
      '/newSumps/target',
      '/newSumps/low',
      '/newSumps/high',
    ])
  })

  test('the answers fill an empty book', async () => {
    const book = metric({ sumps: [], fluids: [] })
    const map: SheetMap = {
      fluids: [{ name: 'Blend 40', brixFactor: null }],
      newSumps: { fillVolume: null, target: 8, low: 6, high: null },
    }
    await take(fixture('wide-european.csv'), map, book)
    expect(book.fluids).toEqual([{ id: 'blend-40', name: 'Blend 40' }])
    expect(book.sumps[0]).toEqual({
      id: 'frase-1',
      name: 'Fräse 1',
      machines: ['Fräse 1'],
      fluid: 'blend-40',
      limits: { concentration: { target: 8, low: 6 } },
    })
    expect((await take(fixture('wide-european.csv'), map, book)).counts).toMatchObject({
      same: 4,
      entries: 0,
      things: 0,
    })
  })
})

describe('a long US sheet with readings and additions in one row', () => {
  const map: SheetMap = { machines: { 'Grinder 1': { fillVolume: null, capacity: 6000 } } }

  test('each row gives its readings and its addition at one instant', async () => {
    const book = us()
    const report = await take(fixture('long-us.csv'), map, book)
    expect(report).toMatchObject({ shape: 'long', dates: 'mdy', decimal: '.', faults: [], questions: [] })
    // 10/5/2026, 7:10 in Chicago is 12:10 UTC. 55 US gal × 3.785411784 L = 208.1976 L, 10 US gal = 37.8541 L,
    // 22 grains × 17.11806 ppm = 376.597 ppm.
    const first = { sump: 'm7', at: '2026-10-05T12:10:00.000Z', by: 'R. Doe', note: 'skimmed first, then topped up' }
    expect(plainly(book.entries).slice(0, 5)).toEqual([
      { ...first, kind: 'reading', brix: 3.4 },
      { ...first, kind: 'reading', volume: expect.closeTo(208.19765, 4) },
      { ...first, kind: 'reading', ph: 9.1 },
      { ...first, kind: 'reading', hardness: expect.closeTo(376.597, 2) },
      { ...first, kind: 'addition', volume: expect.closeTo(37.85412, 4), strength: 8 },
    ])
    expect(book.entries[4]?.typed).toEqual({ at: '10/5/2026 7:10 AM', volume: '10 gal', strength: '8 %' })
  })

  test('concentrate and water become volume and strength, classes stay classes, machines match in any case', async () => {
    const book = us()
    await take(fixture('long-us.csv'), map, book)
    // 1.5 gal of concentrate in 20 gal: 7.5 %; 20 US gal = 75.70824 L.
    const addition = book.entries.filter(({ kind }) => kind === 'addition')[1]
    expect(addition).toMatchObject({
      sump: 'm7',
      at: '2026-10-19T19:30:00.000Z',
      volume: expect.closeTo(75.70824, 4),
      strength: expect.closeTo(7.5, 10),
    })
    expect(addition?.typed).toMatchObject({ concentrate: '1.5 gal', addedWater: '18.5 gal' })
    // 25 grains are 427.95 ppm, 50 grains 855.90.
    expect(book.entries.flatMap((one) => ('hardness' in one ? [one.hardness] : []))).toEqual([
      expect.closeTo(376.597, 2),
      { below: expect.closeTo(427.9515, 3) },
      expect.closeTo(410.833, 2),
      { low: expect.closeTo(427.9515, 3), high: expect.closeTo(855.903, 3) },
    ])
    expect(book.entries.at(-1)).toMatchObject({
      kind: 'addition',
      sump: 'grinder-1',
      strength: 0,
      volume: expect.closeTo(18.92706, 4),
    })
  })

  test('a heading that is not understood is told, never dropped in silence', async () => {
    const report = await preview(fixture('long-us.csv'), map, us())
    expect(report.columns?.at(-1)).toEqual({ heading: 'Shift', field: null, unit: null, sump: null, sumpName: null })
    expect(report.warnings).toContain('"Shift" is not understood; it is left out.')
  })
})

describe('importing again', () => {
  const sheet = (brix: string, note = '') =>
    csv(`Date,Machine,Brix,pH,Notes\n2026-10-05,Mill 7,${brix},9.1,${note}\n2026-10-06,Lathe 2,5.0,,\n`)

  test('the same sheet changes nothing', async () => {
    const book = us()
    await take(fixture('long-us.csv'), { machines: { 'Grinder 1': { fillVolume: null } } }, book)
    const writes = book.writes
    const again = await take(fixture('long-us.csv'), { machines: { 'Grinder 1': { fillVolume: null } } }, book)
    expect(again.counts).toMatchObject({ new: 0, same: 4, corrected: 0, entries: 0, things: 0 })
    expect(again.rows.map(({ fate }) => fate)).toEqual(['same', 'same', 'same', 'blank', 'same'])
    expect(book.writes).toBe(writes)
  })

  test('a corrected cell withdraws what stood and becomes a new entry; nothing else moves', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const report = await take(sheet('3.6'), {}, book)
    expect(report.counts).toMatchObject({ corrected: 1, same: 1, entries: 2 })
    const [old] = book.entries
    expect(book.entries.slice(-2)).toMatchObject([
      { kind: 'void', entry: old?.id, sump: 'm7' },
      { kind: 'reading', brix: 3.6, at: old?.at },
    ])
    expect((await take(sheet('3.6'), {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
  })

  test('a cell corrected back is a third revision', async () => {
    const book = metric()
    for (const brix of ['3.4', '3.6', '3.4']) await take(sheet(brix), {}, book)
    expect(book.entries.flatMap((one) => ('brix' in one && one.sump === 'm7' ? [one.brix] : []))).toEqual([
      3.4, 3.6, 3.4,
    ])
    expect(book.entries.filter(({ kind }) => kind === 'void')).toHaveLength(2)
    expect((await take(sheet('3.4'), {}, book)).counts.entries).toBe(0)
  })

  test('an entry that a person withdrew stays withdrawn', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const [first] = book.entries
    await book.append([
      {
        id: '6f1b3c1e-0000-4000-8000-000000000001',
        kind: 'void',
        at: '2026-10-07T08:00:00Z',
        entry: first!.id,
        sump: 'm7',
      } as Entry,
    ])
    expect((await take(sheet('3.4'), {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
    // Another value is news again; there is nothing left to withdraw.
    expect((await take(sheet('3.7'), {}, book)).counts).toMatchObject({ corrected: 1, entries: 1 })
  })

  test('a deleted row or cell changes nothing', async () => {
    const book = metric()
    await take(sheet('3.4'), {}, book)
    const report = await take(csv('Date,Machine,Brix,pH,Notes\n2026-10-05,Mill 7,3.4,,\n'), {}, book)
    expect(report.counts).toMatchObject({ same: 1, entries: 0 })
    expect(book.entries).toHaveLength(3)
  })

  test('two equal readings of one instant are two entries', async () => {
    const book = metric()
    const twice = csv('Date,Machine,Brix\n2026-10-05,Mill 7,3.4\n2026-10-05,Mill 7,3.4\n')
    expect((await take(twice, {}, book)).counts.entries).toBe(2)
    expect((await take(twice, {}, book)).counts).toMatchObject({ same: 2, entries: 0 })
  })
})

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

describe('what is asked', () => {
  test('the order of dates that nothing tells', async () => {
    const { faults } = await refused(fixture('ambiguous-dates.csv'), {}, metric())
    expect(faults).toMatchObject([{ pointer: '/dates', found: 'nothing' }])
    const book = metric()
    await take(fixture('ambiguous-dates.csv'), { dates: 'mdy' }, book)
    expect(book.entries.map(({ at }) => at.slice(0, 10))).toEqual([
      '2026-03-04',
      '2026-03-04',
      '2026-05-06',
      '2026-05-06',
    ])
  })

  test('a date against the order that was said is a fault', async () => {
    const { faults } = await refused(
      csv('Date,Machine,Brix\n13/04/2026,Mill 7,3\n03/04/2026,Mill 7,3\n'),
      { dates: 'mdy' },
      metric(),
    )
    expect(faults).toMatchObject([{ row: 2, column: 'Date', found: '"13/04/2026"' }])
  })

  test('the heading can say the order', async () => {
    expect((await preview(csv('Date (dd/mm/yyyy),Machine,Brix\n03/04/2026,Mill 7,3\n'), {}, metric())).dates).toBe(
      'dmy',
    )
  })

  test('the decimal sign that nothing tells', async () => {
    const sheet = csv('Date,Machine,Bacteria\n2026-10-05,Mill 7,"1,234"\n')
    expect((await refused(sheet, {}, metric())).faults).toMatchObject([{ pointer: '/decimal' }])
    const [point, comma] = [metric(), metric()]
    await take(sheet, { decimal: '.' }, point)
    await take(sheet, { decimal: ',' }, comma)
    expect([point, comma].map(({ entries }) => 'bacteria' in entries[0]! && entries[0].bacteria)).toEqual([1234, 1.234])
  })

  test('a number with the other sign than was said is a fault', async () => {
    expect(
      (await refused(csv('Date;Machine;Brix\n2026-10-05;Mill 7;3,4\n'), { decimal: '.' }, metric())).faults,
    ).toMatchObject([{ row: 2, column: 'Brix', found: '"3,4"' }])
  })

  test.each([
    ['Level', '200', '/columns/Level/unit', 'L'],
    ['Hardness', '12', '/columns/Hardness/unit', 'gpg'],
    ['Conductivity', '2.4', '/columns/Conductivity/unit', 'mS/cm'],
  ])('the unit of %s where neither heading nor figures tell', async (heading, value, pointer, unit) => {
    const sheet = csv(`Date,Machine,${heading}\n2026-10-05,Mill 7,${value}\n`)
    const { questions } = await preview(sheet, {}, us())
    expect(questions).toMatchObject([{ pointer, choices: expect.arrayContaining([unit]) }])
    expect((await take(sheet, { columns: { [heading]: { unit } } }, us())).counts.entries).toBe(1)
  })

  test('a hardness above any sum of grains or degrees can only be ppm, and that is told', async () => {
    const report = await preview(csv('Date,Machine,Hardness\n2026-10-05,Mill 7,180\n'), {}, us())
    expect(report.questions).toEqual([])
    expect(report.warnings.join()).toContain('taken as ppm')
  })

  test("volumes without a unit are in the shop's own, and that is told", async () => {
    const book = us()
    const report = await take(csv('Date,Machine,Added\n10/15/2026,Mill 7,10\n'), {}, book)
    expect(report.warnings.join()).toContain("US gal, the shop's own")
    expect(book.entries[0]).toMatchObject({ volume: expect.closeTo(37.85412, 4) })
  })

  test('what machine columns hold where no title says it', async () => {
    const sheet = csv('Date,Mill 7,Lathe 2\n2026-10-05,3.4,5.1\n')
    expect((await preview(sheet, {}, metric())).questions).toMatchObject([{ pointer: '/values/field' }])
    const book = metric()
    await take(sheet, { values: { field: 'brix' } }, book)
    expect(book.entries).toMatchObject([
      { sump: 'm7', brix: 3.4 },
      { sump: 'l2', brix: 5.1 },
    ])
  })

  test('a column of weeks is no machine', async () => {
    const report = await preview(csv('KW,Date,Mill 7 Brix\n41,2026-10-05,3.4\n'), {}, metric())
    expect(report.questions).toEqual([])
    expect(report.warnings).toEqual(['"KW" is not understood; it is left out.'])
  })

  test('which machine a sheet without any is about', async () => {
    const sheet = csv('Date,Brix,pH\n2026-10-05,3.4,9\n')
    expect((await preview(sheet, {}, metric())).questions.map(({ pointer }) => pointer)).toEqual([
      '/columns/Brix/sump',
      '/columns/pH/sump',
    ])
    const book = metric()
    await take(sheet, { columns: { Brix: { sump: 'Mill 7' }, pH: { sump: 'Mill 7' } } }, book)
    expect(book.entries).toMatchObject([
      { sump: 'm7', brix: 3.4 },
      { sump: 'm7', ph: 9 },
    ])
  })
})

describe('shapes that shops use', () => {
  const bySump = (book: MemoryBook) =>
    book.entries.map((one) =>
      [
        'sump' in one && one.sump,
        ...(['brix', 'ph', 'volume', 'hardness'] as const).flatMap((field) => (field in one ? [field] : [])),
      ].join(' '),
    )

  test.each([
    ['machine and field in one heading', 'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n'],
    ['fields under merged machines', ',Mill 7,,Lathe 2\nDate,Brix,pH,Level (L)\n2026-10-05,3.4,9,300\n'],
    ['the date in the upper of two lines', 'Date,Mill 7,,Lathe 2\n,Brix,pH,Level (L)\n2026-10-05,3.4,9,300\n'],
    ['units in a line of their own', 'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level\n,°Bx,,L\n2026-10-05,3.4,9,300\n'],
    ['an empty corner', ',Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n'],
    ['the field before the machine', 'Date,Brix Mill 7,pH (Mill 7),Level (L) - Lathe 2\n2026-10-05,3.4,9,300\n'],
    [
      'headings again on every page',
      'Date,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\nDate,Mill 7 Brix,Mill 7 pH,Lathe 2 level (L)\n2026-10-05,3.4,9,300\n',
    ],
  ])('%s', async (_, text) => {
    const book = metric()
    await take(csv(text), {}, book)
    expect(bySump(book)).toEqual(['m7 brix', 'm7 ph', 'l2 volume'])
  })

  test("a machine goes by its own name, its machines' names and its id", async () => {
    const book = metric()
    await take(csv('Date,Machine,Brix\n2026-10-05, mill  7 ,3\n2026-10-06,BIG LATHE,3\n2026-10-07,l2,3\n'), {}, book)
    expect(book.entries.map((one) => 'sump' in one && one.sump)).toEqual(['m7', 'l2', 'l2'])
  })

  test('a map can give a name to a sump of the book, leave a column out, and rename another', async () => {
    const book = metric()
    const map: SheetMap = {
      machines: { 'M-07': 'm7' },
      columns: { Strength: { field: 'titration', unit: '%' }, pH: null },
    }
    await take(csv('Date,Machine,Strength,pH\n2026-10-05,M-07,7.2,99\n'), map, book)
    expect(book.entries).toMatchObject([{ sump: 'm7', titration: 7.2 }])
    expect(
      (await refused(csv('Date,Machine,Brix\n2026-10-05,M-07,3\n'), { machines: { 'M-07': 'm9' } }, book)).faults,
    ).toMatchObject([{ pointer: '/machines/M-07' }])
  })

  test('level, pumps, draw-off, skimming, a fill to the mark and a note alone', async () => {
    const book = metric({ waters: [{ id: 'w1', name: 'Ring main', kind: 'tap' }] })
    const text =
      'Date,Machine,Level (L),Pumps,Drawn off (L),Skimmed (L),Added (L),Added %,Water,Notes\n2026-10-05,Mill 7,200,running,5,0.5,full,6,tap,\n2026-10-06,Mill 7,,,,,,,,smells\n'
    await take(csv(text), {}, book)
    const at = { sump: 'm7', at: '2026-10-05T10:00:00.000Z' }
    expect(plainly(book.entries)).toEqual([
      { ...at, kind: 'reading', volume: 200, pumps: 'running' },
      { ...at, kind: 'drawoff', volume: 5 },
      { ...at, kind: 'skim', litres: 0.5 },
      { ...at, kind: 'addition', toMark: true, strength: 6, water: 'w1' },
      { sump: 'm7', at: '2026-10-06T10:00:00.000Z', kind: 'observation', note: 'smells' },
    ])
  })

  test('brix goes with its temperature, every other reading alone', async () => {
    const book = us()
    await take(csv('Date,Machine,Brix,Temp (°F),Chloride (mg/L)\n10/15/2026,Mill 7,3.4,68,40\n'), {}, book)
    expect(plainly(book.entries)).toMatchObject([{ brix: 3.4, temperature: expect.closeTo(20, 10) }, { chloride: 40 }])
  })
})

describe('a workbook', () => {
  const cell = (value: string | number) =>
    typeof value === 'number' ? { value, type: Number } : { value, type: String }
  const dated = (value: Date, format: string) => ({ value, type: Date, format })
  const book = async (rows: Parameters<typeof writeExcelFile>[0]) =>
    sourceOf('log.xlsx', await writeExcelFile([{ sheet: 'Brix', data: rows }] as never).toBuffer())

  test('dates, times and numbers are read as the cells hold them', async () => {
    const day = dated(new Date(Date.UTC(2026, 9, 5)), 'dd.mm.yyyy')
    const time = dated(new Date(Date.UTC(1899, 11, 30, 14, 30)), 'hh:mm')
    const source = await book([
      ['Date', 'Time', 'Machine', 'Brix', 'Level (gal)'].map(cell),
      [day, time, cell('Mill 7'), cell(3.4), cell('55')],
      // 46301 days after 30 December 1899 is 6 October 2026.
      [cell(46301), null, cell('Lathe 2'), cell(5.25), null],
    ] as never)
    const into = us()
    await take(source, {}, into)
    expect(into.entries.map((one) => [one.at, one.typed?.at])).toEqual([
      ['2026-10-05T19:30:00.000Z', '2026-10-05 14:30'],
      ['2026-10-05T19:30:00.000Z', '2026-10-05 14:30'],
      ['2026-10-06T17:00:00.000Z', '46301'],
    ])
    expect(into.entries[2]).toMatchObject({ brix: 5.25, sump: 'l2' })
    expect((await take(source, {}, into)).counts.entries).toBe(0)
  })

  test('the name of the sheet can say what the machine columns hold', async () => {
    const into = metric()
    await take(
      await book([
        [cell('Date'), cell('Mill 7')],
        [cell('2026-10-05'), cell(3.4)],
      ] as never),
      {},
      into,
    )
    expect(into.entries).toMatchObject([{ sump: 'm7', brix: 3.4 }])
  })

  test('8 % may be kept as 0.08, which is asked', async () => {
    const source = await book([
      ['Date', 'Machine', 'Added (L)', 'Added strength %'].map(cell),
      ['2026-10-05', 'Mill 7', 60, 0.08].map(cell),
    ] as never)
    expect((await preview(source, {}, metric())).questions).toMatchObject([
      { pointer: '/columns/Added strength %/unit', choices: ['%', 'fraction of 1'] },
    ])
    const into = metric()
    await take(source, { columns: { 'Added strength %': { unit: 'fraction of 1' } } }, into)
    expect(into.entries).toMatchObject([{ volume: 60, strength: 8 }])
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
