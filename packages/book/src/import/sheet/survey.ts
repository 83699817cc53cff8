import type { SheetField } from '../sheet-types.ts'
import { mapValue, readCell } from './cells.ts'
import { type DateEvidence, noDates, weighDate } from './date-evidence.ts'
import { type DecimalEvidence, noDecimals, weighDecimal } from './decimals.ts'
import { isNumberField } from './fields.ts'
import type { Head } from './heading-row.ts'
import { type SheetRow, type SheetRows, textOf } from './sheet-rows.ts'

/** What the cells under one heading look like, all of them together. */
export interface ColumnEvidence {
  /** Cells that hold anything. */
  filled: number
  /** Cells that begin with a number. */
  numbers: number
  /** Numbers without a unit of their own. */
  bare: number
  /** The largest figure without a unit; null where there is none. */
  largest: number | null
  /** The first figures without a unit, of a heading that is not understood. */
  figures: number[]
  decimals: DecimalEvidence
  dates: DateEvidence
}

/** What a whole sheet shows before any of it is taken in. */
export interface Survey {
  columns: ColumnEvidence[]
  /** Names in the column of machines, as first written, in order of appearance. */
  machines: string[]
}

/** What the headings say so far; null for a heading that is not understood and may be a machine. */
export type Roles = readonly (SheetField | null)[]

/** Reads the whole sheet once and keeps what its columns show together. */
export async function surveySheet(sheet: SheetRows, head: Head, roles: Roles): Promise<Survey> {
  const survey: Survey = { columns: head.headings.map(noEvidence), machines: [] }
  const seen = new Set<string>()
  for await (const row of sheet.rows()) {
    if (row.row <= head.lastRow || repeatsHeadings(row, head)) continue
    for (let column = 0; column < row.cells.length; column += 1) {
      if (row.cells[column] === null || row.cells[column] === '') continue
      const text = textOf(row.cells[column])
      if (text === '') continue
      while (survey.columns.length <= column) survey.columns.push(noEvidence())
      const evidence = survey.columns[column]!
      const role = roles[column] ?? null
      evidence.filled += 1
      if (role === 'at' && typeof row.cells[column] === 'string') weighDate(evidence.dates, text)
      if (role === 'sump' && !seen.has(text)) {
        seen.add(text)
        survey.machines.push(text)
      }
      if (role === null || isNumberField(role)) weighNumber(evidence, row.cells[column]!, text, role)
    }
  }
  return survey
}

/** A row that repeats the headings, as printed lists do on every page. */
export function repeatsHeadings({ cells }: SheetRow, { headings }: Head): boolean {
  let same = 0
  for (let column = 0; column < cells.length; column += 1) {
    const cell = cells[column]
    if (cell === null || cell === '') continue
    if (typeof cell !== 'string' || headings[column] === undefined || textOf(cell) !== headings[column]) return false
    same += 1
  }
  return same >= 2
}

/** More figures would tell no more. */
const keptFigures = 60

/** Fields whose unit the size of the figures can tell. */
const sizeTells = new Set<SheetField>(['hardness', 'conductivity', 'titration', 'trampOil', 'addedStrength'])

const beginsWithNumber = /^(?:[<>≤≥]=?\s*)?[+\-−]?\s?[.,]?\d/
const exponentSign = /(\d)\s?[eE×xX*^]\s?\+?(\d)/g

function weighNumber(evidence: ColumnEvidence, cell: unknown, text: string, role: SheetField | null): void {
  if (!beginsWithNumber.test(text)) return
  evidence.numbers += 1
  if (typeof cell === 'string' && /[.,]/.test(text)) weighDecimal(evidence.decimals, text)
  if (/[\p{L}°%"]/u.test(text.replace(exponentSign, '$1$2'))) return
  evidence.bare += 1
  if (role === null || sizeTells.has(role)) weighSize(evidence, text)
}

function weighSize(evidence: ColumnEvidence, text: string): void {
  const read = readCell(text, { sign: null, strict: false })
  if (read.kind !== 'value') return
  mapValue(read.value, (figure) => {
    evidence.largest = Math.max(evidence.largest ?? figure, figure)
    if (evidence.figures.length < keptFigures) evidence.figures.push(figure)
    return figure
  })
}

const noEvidence = (): ColumnEvidence => ({
  filled: 0,
  numbers: 0,
  bare: 0,
  largest: null,
  figures: [],
  decimals: noDecimals(),
  dates: noDates(),
})
