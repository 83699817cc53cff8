import { halve } from '../halve.ts'
import type { Litres, Millimetres } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'
import { type DipLevel, type DipTable, type DipVolume, levelAt, requireDipTable, volumeAt } from './dip-table.ts'
import { requireShape, type Shape, shapeHeight, shapeVolume } from './shapes.ts'

/** A sump or tank: shapes with what stands in them, or a table somebody has gauged. */
export type Vessel =
  | {
      /** At least one. */
      shapes: readonly Shape[]
      /** Litres taken up by pumps, pipes and sludge, spread evenly over the full depth; 0 unless given, less than the shapes hold. */
      displaced?: Litres | undefined
      table?: undefined
    }
  | { table: DipTable; shapes?: undefined }

/** A vessel at one level. */
export type VesselAtLevel =
  | {
      outcome: 'volume'
      volume: Litres
      /** What the vessel holds at its highest level. */
      full: Litres
      /** Evenly spaced levels from the lowest to the highest. */
      table: [level: Millimetres, volume: Litres][]
    }
  | { outcome: 'outside'; found: Millimetres; low: Millimetres; high: Millimetres }

/**
 * What a vessel holds at a level above its floor:
 *
 *     volume = Σ shapes up to the level − displaced · level / depth
 *
 * never below 0, or read from the vessel's own table. A level below the floor or above the brim is an outcome, not a guess.
 *
 * @throws {RangeError} a size, table or displacement outside the range its field gives
 * @example vesselVolume({ shapes: [{ kind: 'box', length: 1200, width: 600, height: 350 }] }, 175) // volume 126
 */
export function vesselVolume(vessel: Vessel, level: Millimetres): DipVolume {
  if (vessel.table !== undefined) return volumeAt(vessel.table, level)
  requireShapes(vessel.shapes, vessel.displaced ?? 0)
  requireRange('level', level, {})
  const high = depthOf(vessel.shapes)
  if (level < 0 || level > high) return { outcome: 'outside', found: level, low: 0, high }
  const displaced = ((vessel.displaced ?? 0) * level) / high
  return { outcome: 'volume', volume: Math.max(0, grossVolume(vessel.shapes, level) - displaced) }
}

/**
 * The level at which a vessel holds a volume: the inverse of {@link vesselVolume}.
 *
 * Where much is displaced in a vessel with a narrow floor, two levels can hold the same; one of them is given.
 *
 * @throws {RangeError} as {@link vesselVolume}
 */
export function vesselLevel(vessel: Vessel, volume: Litres): DipLevel {
  if (vessel.table !== undefined) return levelAt(vessel.table, volume)
  const { low, high } = vesselRange(vessel)
  const full = litresAt(vessel, high)
  requireRange('volume', volume, {})
  if (volume < 0 || volume > full) return { outcome: 'outside', found: volume, low: 0, high: full }
  return { outcome: 'level', level: halve(low, high, (level) => litresAt(vessel, level) < volume) }
}

/**
 * A dip table with `rows` evenly spaced levels, both ends included.
 *
 * @throws {RangeError} as {@link vesselVolume}; fewer than 2 rows
 */
export function vesselTable(vessel: Vessel, rows = 21): [level: Millimetres, volume: Litres][] {
  requireRange('rows', rows, { min: 2 })
  const { low, high } = vesselRange(vessel)
  return Array.from({ length: rows }, (_, row) => {
    const level = row === rows - 1 ? high : low + ((high - low) * row) / (rows - 1)
    return [level, litresAt(vessel, level)]
  })
}

/**
 * Everything about a vessel at one level: its volume, what it holds full, and its dip table.
 *
 * @throws {RangeError} as {@link vesselVolume}
 */
export function vesselAt(vessel: Vessel, level: Millimetres): VesselAtLevel {
  const now = vesselVolume(vessel, level)
  if (now.outcome === 'outside') return { outcome: 'outside', found: now.found, low: now.low, high: now.high }
  return {
    outcome: 'volume',
    volume: now.volume,
    full: litresAt(vessel, vesselRange(vessel).high),
    table: vesselTable(vessel),
  }
}

/** The lowest and the highest level the vessel can show. */
export function vesselRange(vessel: Vessel): { low: Millimetres; high: Millimetres } {
  if (vessel.table === undefined) {
    requireShapes(vessel.shapes, vessel.displaced ?? 0)
    return { low: 0, high: depthOf(vessel.shapes) }
  }
  requireDipTable(vessel.table)
  return { low: vessel.table[0]![0], high: vessel.table.at(-1)![0] }
}

function litresAt(vessel: Vessel, level: Millimetres): Litres {
  const at = vesselVolume(vessel, level)
  if (at.outcome === 'outside') throw new RangeError(`level is ${level}, expected ${at.low} to ${at.high}`)
  return at.volume
}

function grossVolume(shapes: readonly Shape[], level: Millimetres): Litres {
  return shapes.reduce((sum, shape) => sum + shapeVolume(shape, level - (shape.from ?? 0)), 0)
}

function depthOf(shapes: readonly Shape[]): Millimetres {
  return Math.max(...shapes.map((shape) => (shape.from ?? 0) + shapeHeight(shape)))
}

function requireShapes(shapes: readonly Shape[], displaced: Litres): void {
  if (shapes.length === 0) throw new OutOfRange('shapes', 0, 'at least one shape')
  for (const [index, shape] of shapes.entries()) requireShape(shape, `shapes.${index}.`)
  requireRange('displaced', displaced, { min: 0 })
  const gross = grossVolume(shapes, depthOf(shapes))
  if (displaced >= gross) throw new OutOfRange('displaced', displaced, `less than the ${gross} litres of the shapes`)
}
