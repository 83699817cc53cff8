import { learn, speakAs } from '@sumpbook/fluid'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Book, openBook } from '../../book.ts'
import { sourceOf } from '../../import/sheet/sheet-source.ts'
import { entryPage } from '../../journal/one-entry.ts'
import { emptyBook, emptyStore, smallShop, testId, testNow, testReading } from '../../testing.ts'
import { exportCsv, exportWorkbook } from './export-table.ts'
import { tableHeadings, tableRows } from './table-rows.ts'

const at = '2026-03-03T09:00:00Z'
const shop = smallShop({
  sumps: [
    { id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 },
    { id: 's2', name: '=cmd|calc', fluid: 'f1', fillVolume: 200 },
    { id: 's3', name: 'Saw', fluid: 'f1', fillVolume: 200 },
    { id: 's4', name: 'Saw', fluid: 'f1', fillVolume: 200 },
  ],
})

async function bookWith(...entries: object[]): Promise<Book> {
  const book = openBook(await emptyStore(), () => testNow)
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  const arrivals = await book.putMany(entries)
  expect(arrivals.map(({ status, faults }) => [status, faults])).toEqual(entries.map(() => ['added', []]))
  return book
}
async function csvOf(book: Book): Promise<string> {
  let text = ''
  for await (const piece of exportCsv(book.store)) text += piece
  return text
}
/** The cells of a CSV by another parser than the one that writes them, one object a row. */
const cellsOf = (csv: string) => parse(csv, { columns: true, bom: true }) as Record<string, string>[]

test('an entry is a row, oldest first, in canonical units; what was withdrawn is not there', async () => {
  const book = await bookWith(
    testReading(2, {
      at: '2026-03-03T09:30:00Z',
      brix: 5.4,
      volume: 180.5,
      hardness: { low: 25, high: 50 },
      by: 'J.P.',
    }),
    {
      id: testId(1),
      at,
      kind: 'addition',
      sump: 's1',
      volume: 40,
      strength: 7.5,
      water: 'di',
      note: 'two buckets, "full"',
    },
    testReading(3),
    { id: testId(4), at, kind: 'void', entry: testId(3), reason: 'wrong machine', sump: 's1' },
    { id: testId(5), at: '2026-03-03T09:40:00Z', kind: 'charge', sump: 's1', volume: 200, strength: 8 },
  )
  const rows = cellsOf(await csvOf(book))
  expect(rows.map((row) => Object.fromEntries(Object.entries(row).filter(([, cell]) => cell !== '')))).toEqual([
    {
      Date: '2026-03-03T09:00:00.000Z',
      Machine: 'Mill 1',
      Entry: 'addition',
      'Mix added (L)': '40',
      'Added strength (%)': '7.5',
      'Which water': 'Deionised water',
      Note: 'two buckets, "full"',
    },
    {
      Date: '2026-03-03T09:30:00.000Z',
      Machine: 'Mill 1',
      Entry: 'reading',
      '°Brix': '5.4',
      'Hardness (ppm)': '25-50',
      'Volume in sump (L)': '180.5',
      Who: 'J.P.',
    },
    {
      Date: '2026-03-03T09:40:00.000Z',
      Machine: 'Mill 1',
      Entry: 'charge',
      'In words': 'Fresh charge 200 L at 8 %',
    },
  ])
})

test('what a spreadsheet program would run is guarded, a number below zero is left alone', async () => {
  const book = await bookWith(
    testReading(1, { sump: 's2', note: '=HYPERLINK("http://x.example")', by: '@SUM(A1)' }),
    testReading(2, { temperature: -5.5, note: '-5' }),
  )
  const [run, cold] = cellsOf(await csvOf(book))
  expect(run).toMatchObject({ Machine: "'=cmd|calc", Note: '\'=HYPERLINK("http://x.example")', Who: "'@SUM(A1)" })
  expect(cold).toMatchObject({ 'Temperature (°C)': '-5.5', Note: '-5' })
})

test('two machines of one name stand by their ids', async () => {
  const book = await bookWith(testReading(1, { sump: 's4' }))
  expect(cellsOf(await csvOf(book))[0]!.Machine).toBe('s4')
})

/** Every value of a book's readings and pours: sump, instant, field, value. */
async function valuesIn(book: Book): Promise<string[]> {
  const values: string[] = []
  for await (const row of tableRows(book.store)) {
    const [when, machine] = row
    for (const [n, cell] of row.entries()) {
      if (n > 2 && cell !== null) values.push(`${String(when)} ${String(machine)} ${tableHeadings[n]}: ${String(cell)}`)
    }
  }
  return [...new Set(values)].sort()
}

async function broughtBack(name: string, file: Buffer): Promise<Book> {
  const book = await bookWith()
  const report = await book.importFile(sourceOf(name, file), { map: { decimal: '.' } })
  expect([report.faults, report.questions]).toEqual([[], []])
  return book
}

const many = [
  testReading(1, { brix: 5.4, ph: 9.1, volume: 180.25, temperature: -2.5, pumps: 'running', by: 'J.P.', note: '=1+1' }),
  testReading(2, {
    sump: 's2',
    at: '2026-03-02T10:15:30.250+01:00',
    hardness: { below: 25 },
    bacteria: { atLeast: 1e7 },
  }),
  testReading(3, {
    sump: 's4',
    at,
    brix: 0.1 + 0.2,
    volume: 1e-7,
    conductivity: 1.234,
    nitrite: { low: 0.5, high: 1 },
  }),
  { id: testId(4), at, kind: 'addition', sump: 's1', volume: 40, strength: 7.5, water: 'tap' },
  { id: testId(5), at, kind: 'addition', sump: 's3', toMark: true, strength: 3.25 },
  { id: testId(6), at, kind: 'addition', sump: 's4', concentrate: 2.5 },
  { id: testId(7), at, kind: 'drawoff', sump: 's1', volume: 12 },
  { id: testId(8), at, kind: 'skim', sump: 's1', litres: 0.75 },
  { id: testId(9), at, kind: 'observation', sump: 's2', note: "'quoted', and more" },
]

test.each([
  ['CSV', 'log.csv', async (book: Book) => Buffer.from(await csvOf(book))],
  ['workbook', 'log.xlsx', (book: Book) => exportWorkbook(book.store)],
])('a %s brought into another book gives the same values', async (_, name, exported) => {
  const book = await bookWith(...many)
  const before = await valuesIn(book)
  expect(before.length).toBeGreaterThan(20)
  expect(await valuesIn(await broughtBack(name, await exported(book)))).toEqual(before)
})

test('any reading comes back from the CSV as it was', async () => {
  const number = (max: number) => fc.double({ min: 0, max, noNaN: true, noDefaultInfinity: true })
  const reading = fc.record({
    brix: number(95),
    ph: number(14),
    hardness: number(1e6),
    temperature: fc.double({ min: -20, max: 150, noNaN: true }),
    volume: number(240),
  })
  await fc.assert(
    fc.asyncProperty(fc.array(reading, { minLength: 1, maxLength: 4 }), async (readings) => {
      const entries = readings.map((values, n) => testReading(n, { at: `2026-03-03T09:0${n}:00Z`, ...values }))
      const book = await bookWith(...entries)
      const back = await broughtBack('log.csv', Buffer.from(await csvOf(book)))
      expect(await valuesIn(back)).toEqual(await valuesIn(book))
    }),
    { numRuns: 40 },
  )
})

test('an empty book is a table of headings, and every heading but the words is known to our importer', async () => {
  const book = await emptyBook()
  expect(cellsOf(await csvOf(book))).toEqual([])
  const full = await bookWith(...many)
  const target = await bookWith()
  const report = await target.importFile(sourceOf('log.csv', Buffer.from(await csvOf(full))), {
    map: { decimal: '.' },
    preview: true,
  })
  const unknown = report.columns!.filter(({ field }) => field === null).map(({ heading }) => heading)
  expect(unknown.filter((heading) => !['Entry', 'In words'].includes(heading))).toEqual([])
})

test('a part of the log has what was asked for, the shop’s own entries in words, and who was signed in by name', async () => {
  const book = await bookWith(testReading(1, { by: 'p1' }), testReading(2, { sump: 's2', by: 'JP' }), {
    id: testId(3),
    at,
    kind: 'receipt',
    about: { kind: 'stock', id: 'f1' },
    litres: 200,
    by: 'JP',
  })
  const rowsOf = async (filter: object) => {
    let text = ''
    const names = new Map([['p1', 'Cleo']])
    for await (const piece of exportCsv(book.store, { filter, names })) text += piece
    return cellsOf(text).map((row) => [row.Machine, row.Entry, row.Who])
  }
  expect(await rowsOf({})).toEqual([
    ['Mill 1', 'reading', 'Cleo'],
    ["'=cmd|calc", 'reading', 'JP'],
    ['', 'receipt', 'JP'],
  ])
  expect(await rowsOf({ sump: 's1' })).toEqual([['Mill 1', 'reading', 'Cleo']])
  expect(await rowsOf({ by: ['jp'], kinds: ['receipt', 'order'] })).toEqual([['', 'receipt', 'JP']])
  expect(await rowsOf({ from: '2026-03-04' })).toEqual([])
})

test('what a row says in words is English, whoever asks for the table', async () => {
  const book = await bookWith({ id: testId(3), at, kind: 'skip', sump: 's1', reason: 'running' })
  learn('de', { 'Passed by: {reason}': 'Übergangen: {reason}' })
  speakAs(() => ({ language: 'de', numbers: 'de-DE', units: 'us' }))
  try {
    expect(await csvOf(book)).toContain('Passed by: running')
    const entry = await book.ask(({ journal }) => entryPage(journal, testId(3)))
    expect(entry.text).toBe('Übergangen: running')
  } finally {
    speakAs(() => ({ language: 'en', numbers: 'en' }))
  }
})
