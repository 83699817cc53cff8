import type { Litres, Millimetres, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { type DipTable, levelAt } from './dip-table.ts'

/** A container being marked: what was poured in, and the level it then stood at. */
export interface MarkingPour {
  /** Above 0, measured with something trusted. */
  litres: Litres
  /** Above the floor, or on a stick; higher than after the pour before. */
  level: Millimetres
}

/** A container with its table, and how well each row is known. */
export interface MarkedContainer {
  table: DipTable
  /** Of the volume of each row. */
  volumeSds: Sd[]
}

/**
 * The dip table of a bucket, drum or sump from pours of known volume, as it is done with a measuring jug and a felt pen:
 *
 *     volume after n pours = already there + Σ litres
 *
 * Each pour brings its own error, so the doubt grows as the root of their number: sd × √n. A few large measures are better
 * than many small ones.
 *
 * Source: volumetric gauging of vessels, as in ISO 4269 (calibration of tanks by liquid measurement; from memory).
 *
 * @param pourSd of one pour, litres
 * @param start the level before the first pour and the litres it stands for; empty at level 0 without it
 * @throws {RangeError} a level that does not rise, a quantity outside the range its field gives
 * @example markedByPours([{ litres: 10, level: 80 }, { litres: 10, level: 150 }]).table // [[0, 0], [80, 10], [150, 20]]
 */
export function markedByPours(
  pours: readonly MarkingPour[],
  { pourSd = 0, start = [0, 0] }: { pourSd?: Sd; start?: readonly [level: Millimetres, volume: Litres] } = {},
): MarkedContainer {
  requireRange('pours', pours.length, { min: 1 })
  requireRange('pourSd', pourSd, { min: 0 })
  requireRange('start.1', start[1], { min: 0 })
  const rows: [Millimetres, Litres][] = [[start[0], start[1]]]
  for (const [index, { litres, level }] of pours.entries()) {
    const [before, volume] = rows[index]!
    requireRange(`pours.${index}.litres`, litres, { above: 0 })
    requireRange(`pours.${index}.level`, level, { above: before })
    rows.push([level, volume + litres])
  }
  return { table: rows, volumeSds: rows.map((_, index) => pourSd * Math.sqrt(index)) }
}

/**
 * Where the marks go on a container's wall: the level of every `step` litres that its table reaches, the whole step at its
 * first row included.
 *
 * @throws {RangeError} a step not above 0, a table that does not rise
 * @example marksEvery([[0, 0], [80, 10], [150, 20]], 5) // [[5, 40], [10, 80], [15, 115], [20, 150]] after [0, 0]
 */
export function marksEvery(table: DipTable, step: Litres): [volume: Litres, level: Millimetres][] {
  requireRange('step', step, { above: 0 })
  const [low, high] = [table[0]![1], table.at(-1)![1]]
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step).flatMap((volume) => {
    const at = levelAt(table, Math.min(high, Math.max(low, volume)))
    return at.outcome === 'level' ? [[volume, at.level]] : []
  })
}
