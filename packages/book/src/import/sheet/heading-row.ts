import type { SheetField } from '../sheet-types.ts'
import { readDateText } from './dates.ts'
import { sumpFields } from './fields.ts'
import { readHeading } from './headings.ts'
import { type Cell, type SheetRow, textOf } from './sheet-rows.ts'
import { isUnit, type ShopUnits } from './units.ts'

/** Where a sheet's headings stand and what they say. */
export interface Head {
  /** The row of the headings (the lower one of two). */
  row: number
  /** Rows up to and with this one hold no readings. */
  lastRow: number
  /** By column; '' where nothing stands. Two lines of headings are joined: "Mill 7 Brix". */
  headings: string[]
  /** Units from a line of their own beneath, by column. */
  units: string[]
  /** What stands above the headings: titles. */
  titles: string[]
  /** A column with no heading of a date whose cells are dates, where there is no other. */
  dateColumn: number | null
}

/** What may stand in a heading besides words of the trade. */
export interface KnownHeadings {
  shop: ShopUnits
  /** The field the map gives this heading; null where it leaves it out or to the heading, undefined where it does not name it. */
  mapped(heading: string): SheetField | null | undefined
  /** Whether the book or the map has a machine of this name. */
  isMachine(heading: string): boolean
}

/** Headings are looked for in this many rows from the top. */
export const headLength = 40

/** The row of headings among the first rows: titles and empty rows may stand above it. Null where there is none. */
export function findHead(rows: readonly SheetRow[], known: KnownHeadings): Head | null {
  const filled = rows.filter(({ cells }) => cells.some((cell) => textOf(cell) !== ''))
  const chosen = bestRow(filled, known) ?? rowAboveDates(filled)
  if (chosen === null) return null
  const at = filled.indexOf(chosen)
  const below = filled[at + 1]
  const twoLines = below !== undefined && isLowerHeading(below, known)
  const lower = twoLines ? below : chosen
  const headings = twoLines ? joined(chosen, below) : underMachines(filled[at - 1], chosen, known)
  const next = filled[filled.indexOf(lower) + 1]
  const units = next !== undefined && isUnitRow(next) ? next.cells.map((cell) => bare(textOf(cell))) : []
  const lastRow = units.length > 0 ? next!.row : lower.row
  const hasDate = headings.some((heading) => fieldOf(heading, known) === 'at')
  return {
    row: lower.row,
    lastRow,
    headings,
    units,
    titles: filled.slice(0, at).flatMap(({ cells }) => cells.map(textOf).filter((text) => text !== '')),
    dateColumn: hasDate ? null : columnOfDates(filled.filter(({ row }) => row > lastRow)),
  }
}

/** The row with most cells that are headings; one with a date goes before any without. */
function bestRow(rows: readonly SheetRow[], known: KnownHeadings): SheetRow | null {
  let best: { row: SheetRow; score: number } | null = null
  for (const row of rows) {
    const texts = row.cells.map(textOf).filter((text) => text !== '')
    if (texts.length < 2) continue
    const fields = texts.map((text) => fieldOf(text, known))
    const count = texts.filter(
      (text, i) => fields[i] !== null || known.mapped(text) !== undefined || known.isMachine(text),
    ).length
    const score = count + (fields.includes('at') ? 1000 : 0)
    if (count > 0 && (best === null || score > best.score)) best = { row, score }
  }
  return best === null || (best.score < 1000 && best.score < 2) ? null : best.row
}

/** Where no heading is known: the row above the first one that holds a date. */
function rowAboveDates(rows: readonly SheetRow[]): SheetRow | null {
  const first = rows.findIndex(({ cells }) => cells.some(isDate))
  const above = first > 0 ? rows[first - 1]! : null
  return above !== null && above.cells.filter((cell) => textOf(cell) !== '').length >= 1 ? above : null
}

function fieldOf(text: string, { shop, mapped }: KnownHeadings): SheetField | null {
  return mapped(text) ?? readHeading(text, shop).field
}

/** A second line of headings: fields of machines and nothing else. */
function isLowerHeading({ cells }: SheetRow, known: KnownHeadings): boolean {
  const texts = cells.map(textOf).filter((text) => text !== '')
  const fields = texts.filter((text) => {
    const field = fieldOf(text, known)
    return field !== null && field !== 'at' && field !== 'sump'
  })
  return texts.length >= 2 && fields.length === texts.length && !isUnitRow({ row: 0, cells })
}

/** A cell that was merged over several columns stands in the first of them. */
function filledForward({ cells }: SheetRow): string[] {
  let last = ''
  return cells.map((cell) => {
    const text = textOf(cell)
    if (text !== '') last = text
    return last
  })
}

function joined(upper: SheetRow, lower: SheetRow): string[] {
  const above = filledForward(upper)
  const length = Math.max(upper.cells.length, lower.cells.length)
  return Array.from({ length }, (_, i) => {
    const below = textOf(lower.cells[i])
    return below === '' ? textOf(upper.cells[i]) : `${above[i] ?? above.at(-1) ?? ''} ${below}`.trim()
  })
}

/** Fields under names of machines in the row above: machines that are known, or headings that come again and again. */
function underMachines(upper: SheetRow | undefined, row: SheetRow, known: KnownHeadings): string[] {
  const texts = row.cells.map(textOf)
  if (upper === undefined || upper.row !== row.row - 1 || texts.some((text) => fieldOf(text, known) === 'sump'))
    return texts
  const names = upper.cells.map(textOf).filter((text) => text !== '')
  const doubled = new Set(texts.filter((text, i) => text !== '' && texts.indexOf(text) !== i))
  if (doubled.size === 0 && !names.every((name) => known.isMachine(name))) return texts
  const above = filledForward(upper)
  const isOfMachine = (text: string) => {
    const field = fieldOf(text, known)
    return field !== null && (doubled.has(text) || sumpFields.includes(field))
  }
  return texts.map((text, i) => (isOfMachine(text) ? `${above[i] ?? above.at(-1) ?? ''} ${text}`.trim() : text))
}

function isUnitRow({ cells }: SheetRow): boolean {
  const texts = cells.map(textOf).filter((text) => text !== '')
  return texts.length > 0 && texts.every((text) => isUnit(bare(text)))
}

const bare = (text: string) => text.replace(/^[([{]\s*|\s*[)\]}]$/g, '')

/** The first column whose cells are dates wherever they are filled. */
function columnOfDates(rows: readonly SheetRow[]): number | null {
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length))
  for (let column = 0; column < width; column += 1) {
    const cells = rows.map((row) => row.cells[column]).filter((cell) => textOf(cell) !== '')
    if (cells.length > 0 && cells.filter(isDate).length * 2 > cells.length) return column
  }
  return null
}

function isDate(cell: Cell | undefined): boolean {
  return cell instanceof Date || (typeof cell === 'string' && readDateText(textOf(cell)) !== null)
}
