import { brimTolerance, say, volumeAt } from '@sumpbook/fluid'
import type { Fault } from '../errors.ts'
import type { Reading } from '../schema/entries/index.ts'
import { sayFound } from '../schema/faults.ts'
import type { Sump } from '../schema/things/index.ts'

/** The brim: `capacity`, without it a quarter above the full mark; null where neither is known. */
export function brimOf({ capacity, fillVolume }: Pick<Sump, 'capacity' | 'fillVolume'>): number | null {
  return capacity ?? (fillVolume === undefined ? null : 1.25 * fillVolume)
}

/** Litres that a reading saw in its sump; null where it saw no figure, or a level its dip table does not have. */
export function litresSeen(
  { volume, level }: Pick<Reading, 'volume' | 'level'>,
  { dipTable }: Pick<Sump, 'dipTable'>,
): number | null {
  if (typeof volume === 'number') return volume
  if (typeof level !== 'number' || dipTable === undefined) return null
  const at = volumeAt(dipTable, level)
  return at.outcome === 'volume' ? at.volume : null
}

/** A level more than 5 % above the brim is a slip: nothing stays in a sump up there. */
export function brimFaults(reading: Reading, sump: Sump, at = ''): Fault[] {
  const brim = brimOf(sump)
  const top = sump.dipTable?.at(-1)?.[0]
  if (typeof reading.level === 'number' && top !== undefined && reading.level > brimTolerance * top) {
    const expected = say('at most the end of the dip table of {sump}, {level} mm', {
      sump: sump.name,
      level: String(top),
    })
    return [{ pointer: `${at}/level`, found: `${sayFound(reading.level)} mm`, expected }]
  }
  const litres = litresSeen(reading, sump)
  if (brim === null || litres === null || litres <= brimTolerance * brim) return []
  const expected = say('at most the brim of {sump}, {litres} L', { sump: sump.name, litres: String(Math.round(brim)) })
  if (typeof reading.volume === 'number') return [{ pointer: `${at}/volume`, found: `${sayFound(litres)} L`, expected }]
  const found = say('{level} mm, that is {litres} L', {
    level: sayFound(reading.level),
    litres: String(Math.round(litres)),
  })
  return [{ pointer: `${at}/level`, found, expected }]
}
