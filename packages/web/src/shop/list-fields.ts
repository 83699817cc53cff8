import { millimetresFrom, millimetresTo, readQuantity, say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { type Fault, faultParts, readLitres, readPlain } from '../fields/read.ts'
import { grown, type Row } from '../fields/rows.ts'
import { fieldFigure, fieldVolume, shopUnits } from '../say/units.ts'

/** Litres at levels of a dipstick, millimetres. */
export type DipTable = readonly (readonly [level: number, litres: number])[]

/** A list that a field holds; null where it is empty. */
export type ListRead = { value: readonly number[] | DipTable | null } | { fault: Fault }

/** A strip's pads as they stand in a field: "7 7.5 8". */
export const padsText = (pads: readonly number[]): string => pads.map(fieldFigure).join(' ')

/**
 * Pads from "0 5 10 25". A comma between digits is a decimal sign, so that "7,5" is one pad; before a blank it parts two, as a semicolon
 * does. What is not read so, or does not rise, is a fault: "0,5,10" is never guessed at.
 */
export function readPads(text: string): ListRead {
  const pieces = text.split(/[;\s]+/).flatMap((piece) => piece.replace(/,$/, '') || [])
  const pads: number[] = []
  for (const piece of pieces) {
    const read = readPlain(piece, { min: 0 })
    if ('fault' in read || read.value === null || read.value <= (pads.at(-1) ?? -1)) return { fault: padsFault(piece) }
    pads.push(read.value)
  }
  return pads.length === 1 ? { fault: padsFault(text.trim()) } : { value: pads.length === 0 ? null : pads }
}

const padsFault = (found: string): Fault => ({
  found,
  expected: say('figures of at least two pads, each above the one before, with a blank between: 0 5 10 25'),
})

/** A row of a dip table while it is typed. */
export type DipRow = Row<'level' | 'volume'>

/** A table as one text: a line a row, a tab between its two figures. */
export const textOfDips = (rows: readonly DipRow[]): string =>
  rows
    .map(({ level, volume }) => `${level}\t${volume}`)
    .join('\n')
    .trimEnd()

/** The rows of such a text, with an empty one to go on in. */
export const dipRows = (text: string): readonly DipRow[] =>
  grown(
    text === ''
      ? []
      : text.split('\n').map((line) => ({ level: line.split('\t')[0]!, volume: line.split('\t')[1] ?? '' })),
    ['level', 'volume'],
    1,
  )

export const dipsText = (table: DipTable, units: Units): string =>
  textOfDips(
    table.map(([level, litres]) => ({
      level: fieldFigure(millimetresTo(level, shopUnits[units].length)),
      volume: fieldVolume(litres, units),
    })),
  )

/** A dip table from its text, in the shop's units: at least two rows, levels that rise and litres that never fall; an empty row is none. */
export function readDips(text: string, units: Units): ListRead {
  const table: [number, number][] = []
  for (const [i, { level, volume }] of dipRows(text).entries()) {
    if (level.trim() === '' && volume.trim() === '') continue
    const row = readDipRow(level, volume, units)
    const before = table.at(-1)
    if ('fault' in row) return { fault: inRow(i, row.fault) }
    if (before !== undefined && row.value[0] <= before[0])
      return { fault: inRow(i, { found: level.trim(), expected: say('a level above that of the row before') }) }
    if (before !== undefined && row.value[1] < before[1])
      return { fault: inRow(i, { found: volume.trim(), expected: say('no less than in the row before') }) }
    table.push(row.value)
  }
  if (table.length === 1)
    return { fault: { found: say('one row'), expected: say('at least two, what lies between is reckoned from both') } }
  return { value: table.length === 0 ? null : table }
}

function readDipRow(level: string, volume: string, units: Units): { value: [number, number] } | { fault: Fault } {
  const { length } = shopUnits[units]
  const read = readQuantity(level, { kind: 'length', unit: length })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  const mm = millimetresFrom(read.value, read.unit ?? length)
  if (mm < 0) return { fault: { found: level.trim(), expected: say('at least {min}', { min: '0' }) } }
  const litres = readLitres(volume, units)
  if ('fault' in litres) return litres
  if (litres.value === null) return { fault: { found: say('no volume'), expected: say('what it holds at that level') } }
  return { value: [mm, litres.value] }
}

const inRow = (i: number, { found, expected }: Fault): Fault => ({
  found: say('{found} in row {row}', { found, row: String(i + 1) }),
  expected,
})
