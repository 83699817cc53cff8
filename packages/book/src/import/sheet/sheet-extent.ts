import { strFromU8, unzipSync } from 'fflate'

/** How far a workbook's sheets reach, by the addresses of their cells. */
export interface SheetExtent {
  rows: number
  columns: number
}

/** The farthest cell there is: XFD1048576 (as spreadsheet programs have it since 2007). */
const farthest: SheetExtent = { rows: 1_048_576, columns: 16_384 }
const address = /(?<![\w:.-])r\s*=\s*(?:"([^"]*)"|'([^']*)')/g

/**
 * How far the sheets of a workbook reach. Its reader makes room for every row and column up to the farthest cell, whether anything stands there
 * or not, so a single cell far out is enough to keep it busy for hours. `'nowhere'`: a cell at a place that no sheet has; null: no
 * archive.
 */
export function sheetExtent(bytes: Uint8Array): SheetExtent | 'nowhere' | null {
  const extent: SheetExtent = { rows: 0, columns: 0 }
  for (const part of parts(bytes) ?? [null]) {
    if (part === null) return null
    const xml = strFromU8(part, true)
    if (!xml.includes('sheetData')) continue
    for (const [, double, single] of xml.matchAll(address)) {
      const [, letters, digits] = /^([A-Z]{0,3})(\d{1,7})$/.exec(double ?? single ?? '') ?? []
      if (letters === undefined) return 'nowhere'
      extent.rows = Math.max(extent.rows, Number(digits))
      extent.columns = Math.max(extent.columns, columnOf(letters))
    }
  }
  return extent.rows > farthest.rows || extent.columns > farthest.columns ? 'nowhere' : extent
}

/** A is 1, Z 26, AA 27; without letters 0: the address of a row. */
const columnOf = (letters: string) =>
  [...letters].reduce((column, letter) => 26 * column + letter.charCodeAt(0) - 64, 0)

function parts(bytes: Uint8Array): Uint8Array[] | null {
  try {
    return Object.values(unzipSync(bytes, { filter: ({ name }) => name.endsWith('.xml') }))
  } catch {
    // What is no archive is refused by its reader, with the reason.
    return null
  }
}
