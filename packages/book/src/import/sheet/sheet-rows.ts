import { plain } from '../../export/table/plain-number.ts'

/** A cell as the file has it; empty cells are null. A Date carries the clock on the wall in its UTC fields. */
export type Cell = string | number | boolean | Date | null

/** A row with its place in the sheet: 1 is the first row, empty rows counted, as a spreadsheet program shows it. */
export interface SheetRow {
  row: number
  cells: readonly Cell[]
}

/** A sheet that can be read from its first row as often as needed. */
export interface SheetRows {
  /** The name of a workbook's sheet; null for CSV. */
  title: string | null
  /** What separates the cells of a CSV; null for a workbook. */
  delimiter: string | null
  /** What had to be assumed to read it at all. */
  warnings: string[]
  rows(): AsyncIterable<SheetRow> | Iterable<SheetRow>
}

/** A cell in words, as a person would read it aloud: blanks at the ends and doubled blanks are nothing. */
export function textOf(cell: Cell | undefined): string {
  if (cell === null || cell === undefined) return ''
  if (cell instanceof Date) return wallText(cell)
  if (typeof cell === 'string') return oneLine(cell)
  return typeof cell === 'number' ? plain(cell) : String(cell)
}

/** Most cells have nothing to tidy, so look before replacing. */
const oneLine = (text: string) => (/^\s|\s$|\s\s|[^\S ]/.test(text) ? text.replace(/\s+/g, ' ').trim() : text)

/** "2026-10-05 14:30", the day alone at midnight, the time alone where the day is a workbook's day 0. */
function wallText(date: Date): string {
  if (Number.isNaN(date.getTime())) return 'no date'
  const [day, time] = date.toISOString().split('T') as [string, string]
  const clock = time.endsWith(':00.000Z') ? time.slice(0, 5) : time.slice(0, 8)
  if (date.getTime() < Date.UTC(1900, 0, 1)) return clock
  return clock === '00:00' ? day : `${day} ${clock}`
}
