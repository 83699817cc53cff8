import { say } from '@sumpbook/fluid'
import readExcelFile, { type Sheet } from 'read-excel-file/universal'
import { refusal } from '../../errors.ts'
import { sheetExtent } from './sheet-extent.ts'
import type { Cell, SheetRow, SheetRows } from './sheet-rows.ts'
import { firstBytesOf, type SheetSource } from './sheet-source.ts'
import { unpackedSize } from './unpacked-size.ts'

/** A workbook is read whole; one larger than this is no shop's log. */
const largestWorkbook = 50_000_000
/** Nor one that unpacks to more: a small archive can hold a sea of blanks. */
const largestUnpacked = 400_000_000
/** Cells between the first and the farthest: the reader makes room for all of them. */
const mostCells = 20_000_000

/** One sheet of an XLSX workbook: the one of that name, else the first that holds anything. */
export async function readWorkbook(source: SheetSource, sheet?: string): Promise<SheetRows> {
  const sheets = await sheetsOf(source)
  const chosen =
    sheet === undefined
      ? (sheets.find(({ data }) => data.length > 0) ?? sheets[0])
      : sheets.find((one) => one.sheet === sheet)
  if (chosen === undefined) {
    throw refusal(
      [
        {
          pointer: '/sheet',
          found: JSON.stringify(sheet),
          expected: say('a sheet of the workbook: {sheets}', { sheets: sheets.map((one) => one.sheet).join(', ') }),
        },
      ],
      'sheet',
    )
  }
  const others = sheets.filter((one) => one !== chosen && one.data.length > 0).map((one) => `"${one.sheet}"`)
  const warnings =
    sheet === undefined && others.length > 0
      ? [say('Only the sheet "{sheet}" is read; {others} not.', { sheet: chosen.sheet, others: others.join(', ') })]
      : []
  return { title: chosen.sheet, delimiter: null, warnings, rows: () => rowsOf(chosen) }
}

const tooLarge = (found: string) =>
  refusal([{ pointer: '', found, expected: say('the log alone, or the same as CSV') }], 'sheet')

async function sheetsOf(source: SheetSource): Promise<Sheet[]> {
  const bytes = await firstBytesOf(source, largestWorkbook + 1)
  if (bytes.length > largestWorkbook)
    throw tooLarge(say('a workbook of more than {size} MB', { size: String(largestWorkbook / 1e6) }))
  if ((unpackedSize(bytes) ?? 0) > largestUnpacked) {
    throw tooLarge(say('a workbook that unpacks to more than {size} MB', { size: String(largestUnpacked / 1e6) }))
  }
  const extent = sheetExtent(bytes)
  if (extent === 'nowhere') throw tooLarge(say('a workbook with a cell at a place that no sheet has'))
  if (extent !== null && extent.rows * extent.columns > mostCells) {
    throw tooLarge(
      say('a sheet of {rows} rows and {columns} columns, empty ones included', {
        rows: String(extent.rows),
        columns: String(extent.columns),
      }),
    )
  }
  try {
    // Not the reader for Node: it waits for ever for the end of an archive that is cut, and makes room for whatever a part claims.
    return await readExcelFile(new Blob([new Uint8Array(bytes)]))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw refusal(
      [
        {
          pointer: '',
          found: say('a workbook that cannot be read ({why})', { why }),
          expected: say('a whole .xlsx workbook, or CSV'),
        },
      ],
      'sheet',
    )
  }
}

function* rowsOf({ data }: Sheet): Iterable<SheetRow> {
  for (const [i, cells] of data.entries()) yield { row: i + 1, cells: cells as Cell[] }
}
