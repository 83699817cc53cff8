import { brimTolerance, litresAtLevel } from '@sumpbook/fluid'
import type { Fault } from '../errors.ts'
import type { Reading } from '../schema/entries/index.ts'
import { sayFound } from '../schema/faults.ts'
import type { Sump } from '../schema/things/index.ts'

/** The brim: `capacity`, without it a quarter above the full mark; null where neither is known. */
export function brimOf({ capacity, fillVolume }: Pick<Sump, 'capacity' | 'fillVolume'>): number | null {
  return capacity ?? (fillVolume === undefined ? null : 1.25 * fillVolume)
}

/** Litres that a reading saw in its sump; null where it saw no figure, or a level without a dip table. */
export function litresSeen({ volume, level }: Pick<Reading, 'volume' | 'level'>, { dipTable }: Pick<Sump, 'dipTable'>) {
  if (typeof volume === 'number') return volume
  if (typeof level !== 'number' || dipTable === undefined) return null
  const [, top] = dipTable.at(-1)!
  return level > dipTable.at(-1)![0] ? (top * level) / dipTable.at(-1)![0] : litresAtLevel(dipTable, level)
}

/** A level more than 5 % above the brim is a slip: nothing stays in a sump up there. */
export function brimFaults(reading: Reading, sump: Sump, at = ''): Fault[] {
  const brim = brimOf(sump)
  const litres = litresSeen(reading, sump)
  if (brim === null || litres === null || litres <= brimTolerance * brim) return []
  const field = typeof reading.volume === 'number' ? 'volume' : 'level'
  const seen =
    field === 'volume' ? `${sayFound(litres)} L` : `${sayFound(reading.level)} mm, that is ${Math.round(litres)} L`
  return [
    { pointer: `${at}/${field}`, found: seen, expected: `at most the brim of ${sump.name}, ${Math.round(brim)} L` },
  ]
}
