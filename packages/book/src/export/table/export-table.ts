import { refusal } from '../../errors.ts'
import type { JournalReader } from '../../store/store.ts'
import { guarded } from './formula-guard.ts'
import { plain } from './plain-number.ts'
import { type AskedRows, type TableCell, tableHeadings, tableRows } from './table-rows.ts'

/** Rows put together at a time. */
const rowsAtOnce = 500
/** A workbook is made in memory, and spreadsheet programs end at 1,048,576 rows (ECMA-376 leaves it to them). */
export const largestWorkbookRows = 100_000

/**
 * The table as CSV (RFC 4180), piece by piece: commas, full stop as decimal sign, UTF-8 with the mark by which spreadsheet programs
 * know it. No cell can be run as a formula.
 */
export async function* exportCsv(journal: JournalReader, asked: AskedRows | null = null): AsyncGenerator<string> {
  yield `\uFEFF${line(tableHeadings)}`
  let piece = ''
  let rows = 0
  for await (const cells of tableRows(journal, asked)) {
    piece += line(cells)
    rows += 1
    if (rows % rowsAtOnce !== 0) continue
    yield piece
    piece = ''
  }
  if (piece !== '') yield piece
}

const line = (cells: readonly TableCell[]) => `${cells.map(spelled).join(',')}\r\n`

function spelled(cell: TableCell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return plain(cell)
  const text = guarded(cell)
  return /[",\r\n\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/**
 * The table as an XLSX workbook: numbers as numbers, everything else as text, which no spreadsheet program runs.
 *
 * @throws {BookError} `refused-input` where it would have too many rows
 */
export async function exportWorkbook(journal: JournalReader, asked: AskedRows | null = null): Promise<Buffer> {
  const rows: (string | number | null)[][] = []
  for await (const cells of tableRows(journal, asked)) {
    rows.push(cells)
    if (rows.length > largestWorkbookRows) {
      const expected = `at most ${largestWorkbookRows}: take the CSV, which has no end`
      throw refusal([{ pointer: '/format', found: 'a workbook of more rows', expected }], 'request')
    }
  }
  // Loaded only by who asks for a workbook.
  const { default: writeExcelFile } = await import('write-excel-file/node')
  const bold = tableHeadings.map((value) => ({ value, fontWeight: 'bold' as const }))
  return writeExcelFile([bold, ...rows.map((row) => row.map(cellOf))], { sheet: 'Log', stickyRowsCount: 1 }).toBuffer()
}

const cellOf = (cell: TableCell) => (typeof cell === 'string' ? { value: cell, type: String } : cell)
