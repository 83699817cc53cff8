import { say, sayChoice } from '@sumpbook/fluid'
import { type Fault, refusal } from '../../errors.ts'
import type { SheetBook } from '../sheet-book.ts'
import type { ImportReport, Question, SheetMap } from '../sheet-types.ts'
import { type Judged, judgeRows } from './judge-rows.ts'
import { sayMarks } from './marks.ts'
import { readSheet } from './read-sheet.ts'
import { readSheetMap } from './sheet-map.ts'
import type { SheetSource } from './sheet-source.ts'
import { type Understanding, understandSheet } from './understand.ts'
import { writeRows } from './write-rows.ts'

/**
 * Takes a shop's sheet of readings into the book: CSV or XLSX, one reading a row or one column a machine. Nothing is
 * guessed: what sheet, map and book leave open becomes a question, what is wrong a fault with its row and column. With either,
 * nothing is written. Importing the same again changes nothing; a corrected cell becomes a void and a new entry.
 *
 * The sheet is read several times and never held as a whole (a workbook is). `book.addThing` and `book.append` are called in
 * several steps: whoever implements them makes one transaction of the whole call.
 *
 * @throws {BookError} `refused-input`: a file that cannot be read; without `preview` also every fault and open question
 */
export async function importSheet(
  source: SheetSource,
  map: SheetMap,
  book: SheetBook,
  { preview }: { preview: boolean },
): Promise<ImportReport> {
  const answers = readSheetMap(map)
  const sheet = await readSheet(source, answers.sheet)
  const understanding = await understandSheet(sheet, answers, book)
  const judged = await judgeRows(sheet, understanding, book)
  const report = reportOf(understanding, judged)
  if (preview) return report
  const faults = [...report.faults, ...report.questions.map(asFault)]
  if (faults.length > 0) throw refusal(faults, 'sheet')
  await writeRows(sheet, understanding, judged, book)
  return report
}

const asFault = ({ pointer, question, choices }: Question): Fault => ({
  pointer,
  found: say('nothing'),
  expected: choices === undefined ? question : say('{question} ({choices})', { question, choices: sayChoice(choices) }),
})

function reportOf(understanding: Understanding, judged: Judged): ImportReport {
  const { shape, columns, dateOrder, decimals, machines, things, questions, faults, warnings } = understanding
  const repeated =
    judged.repeated === 0
      ? []
      : [say('{rows} rows repeat the headings and are passed over.', { rows: String(judged.repeated) })]
  return {
    kind: 'sheet',
    shape,
    columns: columns.map(({ heading, field, unit, machine }) => ({
      heading,
      field,
      unit: unit?.name ?? null,
      sump: machine === null ? null : (machines.sumpOf(machine)?.id ?? null),
      sumpName: machine === null ? null : (machines.sumpOf(machine)?.name ?? null),
    })),
    ...(dateOrder === null ? {} : { dates: dateOrder }),
    ...(decimals.sign === null ? {} : { decimal: decimals.sign }),
    questions,
    faults: [...faults, ...judged.faults],
    rows: judged.rows,
    counts: { ...judged.counts, things: machines.added.length + things.added.length },
    warnings: [...warnings, ...sayMarks(judged.marks), ...repeated],
  }
}
