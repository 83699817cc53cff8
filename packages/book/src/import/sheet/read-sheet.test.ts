import { expect, test } from 'vitest'
import writeExcelFile from 'write-excel-file/node'
import { BookError } from '../../errors.ts'
import { readSheet } from './read-sheet.ts'
import { type SheetRow, textOf } from './sheet-rows.ts'
import { isWorkbook, sourceOf } from './sheet-source.ts'

const bytes = (text: string) => new TextEncoder().encode(text)

async function rowsOf(name: string, content: Uint8Array, sheet?: string) {
  const read = await readSheet(sourceOf(name, content), sheet)
  const rows: SheetRow[] = []
  for await (const row of read.rows()) rows.push(row)
  return { ...read, rows }
}

const texts = ({ rows }: { rows: SheetRow[] }) => rows.map(({ cells }) => cells.map(textOf))

async function refusal(content: Uint8Array, name = 'log.csv'): Promise<BookError> {
  return rowsOf(name, content).then(
    () => {
      throw new Error('it was read')
    },
    (error: unknown) => {
      expect(error).toBeInstanceOf(BookError)
      return error as BookError
    },
  )
}

test('a CSV with a byte order mark, CRLF and quoted cells', async () => {
  const read = await rowsOf('log.csv', bytes('\uFEFFDate,Notes\r\n2026-10-05,"low, ""again""\r\nand again"\r\n'))
  expect(texts(read)).toEqual([
    ['Date', 'Notes'],
    ['2026-10-05', 'low, "again" and again'],
  ])
})

test('rows are counted as a spreadsheet program counts them, empty ones as well', async () => {
  const read = await rowsOf('log.csv', bytes('Title\n\nDate;M1\n05.10.2026;3,4\n'))
  expect(read.rows.map(({ row }) => row)).toEqual([1, 2, 3, 4])
})

test('a file can come in the smallest pieces', async () => {
  const content = bytes('\uFEFFDatum;Füllstand\r\n05.10.2026;"210"\r\n')
  const source = { name: 'log.csv', open: () => Array.from(content, (byte) => Uint8Array.of(byte)) }
  const rows: string[][] = []
  for await (const { cells } of (await readSheet(source)).rows()) rows.push(cells.map(textOf))
  expect(rows).toEqual([
    ['Datum', 'Füllstand'],
    ['05.10.2026', '210'],
  ])
})

test('text that is not UTF-8 is read as Windows-1252, and that is told', async () => {
  // "Füllstand €" in Windows-1252: ü is FC, € is 80.
  const read = await rowsOf(
    'log.csv',
    Uint8Array.from([...'Datum;F'].map((sign) => sign.charCodeAt(0)).concat(0xfc, 0x80)),
  )
  expect(texts(read)).toEqual([['Datum', 'Fü€']])
  expect(read.warnings.join()).toContain('Windows-1252')
})

test('UTF-16 is read by its byte order mark', async () => {
  const read = await rowsOf('log.txt', Buffer.from('\uFEFFDatum\tMaß\n5\t6\n', 'utf16le'))
  expect(texts(read)).toEqual([
    ['Datum', 'Maß'],
    ['5', '6'],
  ])
})

test('a file cut off inside quotation marks is refused with its row', async () => {
  const { code, faults } = await refusal(bytes('Date,Notes\n2026-10-05,"cut'))
  expect(code).toBe('refused-input')
  expect(faults).toMatchObject([{ row: 2, found: 'the end of the file inside quotation marks' }])
})

test.each([
  ['an empty file', new Uint8Array(0)],
  ['a broken workbook', bytes('PK\u0003\u0004 and no more')],
  ['an old workbook', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1)],
])('%s is refused', async (_, content) => {
  expect((await refusal(content, 'log.xlsx')).faults).toHaveLength(1)
})

async function workbook(): Promise<Uint8Array> {
  return await writeExcelFile([
    { sheet: 'Cover', data: [] },
    {
      sheet: 'Log',
      data: [
        [{ value: 'Date' }, { value: 'Mill 7' }],
        [
          { value: new Date(Date.UTC(2026, 9, 5, 14, 30)), type: Date, format: 'dd.mm.yyyy hh:mm' },
          { value: 3.4, type: Number },
        ],
      ],
    },
    { sheet: 'Old', data: [[{ value: 'x' }]] },
  ]).toBuffer()
}

test('a workbook gives the first sheet that holds anything, and says which it leaves out', async () => {
  const read = await rowsOf('log.xlsx', await workbook())
  expect(read.title).toBe('Log')
  expect(texts(read)).toEqual([
    ['Date', 'Mill 7'],
    ['2026-10-05 14:30', '3.4'],
  ])
  expect(read.warnings).toEqual(['Only the sheet "Log" is read; "Old" not.'])
})

test('a sheet can be asked for by name', async () => {
  expect(texts(await rowsOf('log.xlsx', await workbook(), 'Old'))).toEqual([['x']])
  await expect(rowsOf('log.xlsx', await workbook(), 'New')).rejects.toMatchObject({ faults: [{ pointer: '/sheet' }] })
})

test('what a file is is told by its first bytes, by its name only without any', () => {
  expect(isWorkbook('log.csv', Uint8Array.of(0x50, 0x4b, 3, 4))).toBe(true)
  expect(isWorkbook('log.xlsx', bytes('Date,Brix'))).toBe(false)
  expect(isWorkbook('log.xlsx', new Uint8Array(0))).toBe(true)
})
