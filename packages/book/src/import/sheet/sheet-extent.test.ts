import { strToU8, zipSync } from 'fflate'
import { expect, test } from 'vitest'
import writeExcelFile from 'write-excel-file/node'
import { readWorkbook } from './read-workbook.ts'
import { sheetExtent } from './sheet-extent.ts'
import { sourceOf } from './sheet-source.ts'

const sheet = (cells: string) =>
  zipSync({ 'xl/worksheets/sheet1.xml': strToU8(`<worksheet><sheetData>${cells}</sheetData></worksheet>`) })

test('a workbook reaches as far as its farthest cell', async () => {
  const workbook = await writeExcelFile([
    ['Date', 'Brix'],
    ['2026-10-05', 3.4],
    ['2026-10-06', 3.5],
  ]).toBuffer()
  expect(sheetExtent(workbook)).toEqual({ rows: 3, columns: 2 })
  // Columns: Z is the 26th, AA the 27th, XFD the 16384th (26² · 24 + 26 · 6 + 4).
  expect(sheetExtent(sheet('<row r="9"><c r="Z1"/><c r=\'AA7\'/></row>'))).toEqual({ rows: 9, columns: 27 })
  expect(sheetExtent(sheet('<c r="XFD1048576"/>'))).toEqual({ rows: 1_048_576, columns: 16_384 })
})

test.each(['XFE1', 'A1048577', 'ZZZZ1', 'a1', '&#65;1', '1A', '', '-1', '1e9'])(
  'no sheet has a cell at %j',
  (place) => {
    expect(sheetExtent(sheet(`<c r="${place}"/>`))).toBe('nowhere')
  },
)

test('a workbook with one cell far out is refused at once', async () => {
  const from = performance.now()
  for (const place of ['XFD1048576', 'A99999999', 'ZZZ9']) {
    await expect(
      readWorkbook(sourceOf('a.xlsx', sheet(`<row r="1"><c r="${place}"><v>1</v></c></row>`))),
    ).rejects.toMatchObject({
      code: 'refused-input',
    })
  }
  expect(performance.now() - from).toBeLessThan(500)
})

test('what is no archive has no extent', () => {
  expect(sheetExtent(strToU8('PK\x03\x04'))).toBe(null)
})
