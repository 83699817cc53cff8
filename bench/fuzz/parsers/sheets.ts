import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { BookError } from '@sumpbook/book'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import writeExcelFile from 'write-excel-file/node'
import { importSheet } from '../../../packages/book/src/import/sheet/import-sheet.ts'
import { memoryBook } from '../../../packages/book/src/import/sheet/memory-book.ts'
import { sourceOf } from '../../../packages/book/src/import/sheet/sheet-source.ts'
import { type Dice, mutated, tokensOf } from '../mutate.ts'
import type { FuzzedParser } from '../parser.ts'

const fixture = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../../packages/book/src/import/sheet/fixtures/${name}`, import.meta.url)))

const words = tokensOf([
  ',',
  ';',
  '\t',
  '\n',
  '\r\n',
  '"',
  '""',
  ' ',
  'Date',
  'Machine',
  'Brix',
  'pH',
  'Level (gal)',
  'Hardness, gpg',
  'Added',
  'Notes',
  'Mill 7 °Brix',
  '10/5/2026',
  '31.02.2026',
  '2026-10-05T09:30:00+02:00',
  '9:61',
  '3,4',
  '1.234',
  '1,234,567.8',
  '<25',
  '>1000',
  '25-50',
  '10^5',
  '1e400',
  '-0',
  '∞',
  'NaN',
  'n/a',
  '#REF!',
  '=1+1',
  "'=1",
  '\u0000',
  '\uFEFF',
  '\uFFFD',
  '𝟗',
  '٣',
  'é',
  '9'.repeat(400),
  'x'.repeat(5000),
])

/** Reads a sheet into a book in memory; a refusal must name faults and write nothing, an import must not be refused by the book. */
async function bring(name: string, bytes: Uint8Array, dice: Dice): Promise<'taken' | 'refused'> {
  const units = (['metric', 'us', 'imperial'] as const)[dice(3)]!
  const fluids = [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6 }]
  const sumps = [{ id: 's1', name: 'Mill 7', fluid: 'f1', fillVolume: 200 }]
  const book = memoryBook({ units, fluids, sumps })
  const known = { newSumps: { fluid: 'f1', fillVolume: null, target: null } }
  const map = dice(2) === 0 ? {} : { ...known, dates: 'dmy' as const, decimal: '.' as const }
  try {
    await importSheet(sourceOf(name, bytes), map, book, { preview: dice(4) === 0 })
    return 'taken'
  } catch (error) {
    if (!(error instanceof BookError) || error.code !== 'refused-input') throw error
    if (error.faults.length === 0) throw new Error('a refusal without a fault')
    if (book.writes > 0) throw new Error('a refusal that wrote something')
    return 'refused'
  }
}

const csvSeeds = [
  'long-us.csv',
  'wide-european.csv',
  'wide-european-1252.csv',
  'ambiguous-dates.csv',
  'faulty.csv',
].map(fixture)

/** CSV of any making. */
export const csv: FuzzedParser = {
  name: 'CSV',
  tryOne: (dice) => bring('sheet.csv', mutated(dice, csvSeeds, words), dice),
}

const rows = [
  ['Date', 'Machine', 'Brix', 'pH', 'Level (L)', 'Notes'],
  [new Date('2026-10-05T07:10:00Z'), 'Mill 7', 3.4, 9.1, 155, 'low'],
  [new Date('2026-10-06T00:00:00Z'), 'Lathe 2', 5.2, null, '<25', true],
  ['07.10.2026', 'Mill 7', '3,1', 9, -1, 'x'],
].map((row) =>
  row.map((cell) => (cell instanceof Date ? { value: cell, type: Date, format: 'yyyy-mm-dd hh:mm' } : cell)),
)
const workbook = await writeExcelFile(rows as never).toBuffer()
const parts = unzipSync(workbook)
const partNames = Object.keys(parts).filter((name) => /\.(xml|rels)$/.test(name))
const tags = tokensOf([
  '<c r="A1" t="s"><v>0</v></c>',
  '<c r="ZZZ9999999"><v>1</v></c>',
  '<row r="99999999">',
  '</row>',
  '<row>',
  '<v>',
  '</v>',
  '<v>1e308</v>',
  '<f>1+1</f>',
  't="b"',
  't="e"',
  't="d"',
  't="inlineStr"',
  's="999"',
  '<v>-1</v>',
  '&#0;',
  '&amp;',
  '&bogus;',
  '<!--',
  '-->',
  '<![CDATA[',
  ']]>',
  '<!DOCTYPE x [<!ENTITY a "b">]>',
  '<sheetData/>',
  '<si><t>',
  'xml:space="preserve"',
  '\u0000',
  '\uFFFE',
  '9'.repeat(400),
  'A'.repeat(2000),
])

/** Workbooks: half of them broken as archives, half whole archives of broken parts. */
export const xlsx: FuzzedParser = {
  name: 'XLSX',
  tryOne: (dice) => {
    if (dice(2) === 0) return bring('sheet.xlsx', mutated(dice, [workbook], tags), dice)
    const name = partNames[dice(partNames.length)]!
    const broken = mutated(dice, [parts[name]!], tags)
    return bring('sheet.xlsx', zipSync({ ...parts, [name]: strToU8(strFromU8(broken)) }, { level: 0 }), dice)
  },
}
