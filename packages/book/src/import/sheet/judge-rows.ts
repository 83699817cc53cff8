import { say } from '@sumpbook/fluid'
import type { Fault } from '../../errors.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { ImportReport, RowFate } from '../sheet-types.ts'
import { ordinals } from './entry-id.ts'
import { type Fate, Fates } from './fates.ts'
import type { RowMark } from './read-row.ts'
import { type Revised, revise } from './revisions.ts'
import { type BatchRow, placedAt, rowBatches } from './sheet-batches.ts'
import type { SheetRows } from './sheet-rows.ts'
import type { Understanding } from './understand.ts'

/** Rows whose fate is told one by one. */
const toldRows = 500

/** What all rows of a sheet would become. */
export interface Judged {
  faults: Fault[]
  rows: RowFate[]
  counts: Omit<ImportReport['counts'], 'things'>
  /** Of every entry of the sheet, in its order. */
  fates: Fates
  marks: Map<RowMark, { count: number; row: number }>
  /** Rows that repeat the headings. */
  repeated: number
}

/** Reads every row and compares its entries with the book. Writes nothing. */
export async function judgeRows(sheet: SheetRows, understanding: Understanding, book: SheetBook): Promise<Judged> {
  const open = understanding.questions.length > 0 || understanding.faults.length > 0
  const judged: Judged = {
    faults: [],
    rows: [],
    counts: { rows: 0, new: 0, same: 0, corrected: 0, blank: 0, refused: 0, entries: 0 },
    fates: new Fates(),
    marks: new Map(),
    repeated: 0,
  }
  const order = ordinals()
  for await (const batch of rowBatches(sheet, understanding, book, { judge: true })) {
    const entries = batch.flatMap(({ drafts }) => drafts.map((draft) => placedAt(draft, order.next(draft))))
    const fates = open ? entries.map(asNew) : await revise(entries, book)
    let next = 0
    for (const row of batch) {
      const own = fates.slice(next, next + row.drafts.length)
      for (const [i, { fate }] of own.entries()) judged.fates.push(fate, entries[next + i]!.slot.ordinal)
      next += row.drafts.length
      takeRow(judged, row, own, open)
    }
  }
  return judged
}

/** While a question is open nothing can be compared with the book. */
const asNew = (): Pick<Revised, 'fate' | 'count'> => ({ fate: 'new', count: 1 })

function takeRow(judged: Judged, row: BatchRow, own: readonly Pick<Revised, 'fate' | 'count'>[], open: boolean): void {
  if (row.repeats) {
    judged.repeated += 1
    return
  }
  for (const fault of row.faults) judged.faults.push(fault)
  for (const { count } of own) judged.counts.entries += count
  for (const mark of row.marks) {
    const counted = judged.marks.get(mark)
    if (counted === undefined) judged.marks.set(mark, { count: 1, row: row.row })
    else counted.count += 1
  }
  const fate = fateOf(row, own, open)
  judged.counts.rows += 1
  judged.counts[fate] += 1
  if (judged.rows.length < toldRows) {
    judged.rows.push({ row: row.row, fate, text: row.text === '' ? say('nothing was read') : row.text })
  }
}

/** A row waits as new where an open question alone keeps it from making entries. */
function fateOf({ faults, text }: BatchRow, own: readonly { fate: Fate }[], open: boolean): RowFate['fate'] {
  if (faults.length > 0) return 'refused'
  if (own.some(({ fate }) => fate === 'corrected')) return 'corrected'
  if (own.some(({ fate }) => fate === 'new')) return 'new'
  if (own.length > 0) return 'same'
  return open && text !== '' ? 'new' : 'blank'
}
