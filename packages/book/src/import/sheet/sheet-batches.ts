import type { SheetBook } from '../sheet-book.ts'
import { type RowRead, rowReader } from './read-row.ts'
import type { Placed } from './revisions.ts'
import type { Draft } from './row-entries.ts'
import { type SheetRows, textOf } from './sheet-rows.ts'
import { repeatsHeadings } from './survey.ts'
import type { Understanding } from './understand.ts'
import { zoneClock } from './zone.ts'

/** A row below the headings that holds anything. */
export interface BatchRow extends RowRead {
  row: number
  /** It repeats the headings and holds no readings. */
  repeats: boolean
}

/** Rows that are looked up and written together: few enough to be forgotten soon. */
const batchRows = 25

/** The rows of a sheet below its headings, read, a batch at a time; empty rows are passed over. */
export async function* rowBatches(
  sheet: SheetRows,
  { head, shape, columns, dateOrder, decimals, decimalsOpen, machines, things }: Understanding,
  { shop }: SheetBook,
  { judge }: { judge: boolean },
): AsyncIterable<BatchRow[]> {
  const readRow = rowReader({
    shape,
    columns: columns.filter(({ field, machine }) => field !== null || machine !== null),
    time: { order: dateOrder, zone: zoneClock(shop.timeZone), workbook: sheet.delimiter === null },
    numbers: { rule: decimals, shop: shop.units, decimalOpen: decimalsOpen },
    waters: things.waters,
    sumpOf: machines.sumpOf,
    judge,
  })
  let batch: BatchRow[] = []
  for await (const row of sheet.rows()) {
    if (row.row <= head.lastRow || row.cells.every((cell) => textOf(cell) === '')) continue
    const repeats = repeatsHeadings(row, head)
    batch.push({ row: row.row, repeats, ...(repeats ? nothingRead() : readRow(row)) })
    if (batch.length < batchRows) continue
    yield batch
    batch = []
  }
  yield batch
}

const nothingRead = (): RowRead => ({ drafts: [], faults: [], text: '', marks: [] })

/** An entry at its place in the sheet. */
export function placedAt(draft: Draft, ordinal: number): Placed {
  const { sump, at } = draft.entry
  return { draft, slot: { sump, at, group: draft.group, ordinal } }
}
