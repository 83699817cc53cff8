import { say } from '@sumpbook/fluid'
import { refusal } from '../../errors.ts'
import type { Entry } from '../../schema/entries/index.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { Judged } from './judge-rows.ts'
import { entryFrom, type Placed, revise } from './revisions.ts'
import { placedAt, rowBatches } from './sheet-batches.ts'
import type { SheetRows } from './sheet-rows.ts'
import type { Understanding } from './understand.ts'

/** Things first, then the entries in the order of the sheet. Only where nothing is at fault and nothing is open. */
export async function writeRows(
  sheet: SheetRows,
  understanding: Understanding,
  judged: Judged,
  book: SheetBook,
): Promise<void> {
  for (const { kind, thing } of understanding.things.added) await book.addThing(kind, thing)
  for (const sump of understanding.machines.added) await book.addThing('sump', { ...sump })
  if (judged.counts.entries === 0) return
  let next = 0
  for await (const batch of rowBatches(sheet, understanding, book, { judge: false })) {
    if (batch.some(({ faults }) => faults.length > 0)) throw fileChanged()
    const from = next
    const drafts = batch.flatMap((row) => row.drafts)
    if (from + drafts.length > judged.fates.length) throw fileChanged()
    const coming = drafts.map((draft, i) => placedAt(draft, judged.fates.ordinalAt(from + i)))
    const entries = await entriesOf(coming, from, judged, book)
    next += coming.length
    if (entries.length > 0) await book.append(entries)
  }
  if (next !== judged.fates.length) throw fileChanged()
}

async function entriesOf(
  coming: readonly Placed[],
  from: number,
  { fates }: Judged,
  book: SheetBook,
): Promise<Entry[]> {
  const corrected = coming.filter((_, i) => fates.at(from + i) === 'corrected')
  const revised = corrected.length === 0 ? [] : await revise(corrected, book)
  const entries: Entry[] = []
  let next = 0
  for (const [i, one] of coming.entries()) {
    const fate = fates.at(from + i)
    if (fate === 'new') entries.push(entryFrom(one, 0))
    if (fate === 'corrected') entries.push(...revised[next++]!.entries())
  }
  return entries
}

const fileChanged = () =>
  refusal(
    [
      {
        pointer: '',
        found: say('a file that changed while it was read'),
        expected: say('the same file from beginning to end'),
      },
    ],
    'sheet',
  )
