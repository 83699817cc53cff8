import {
  brimTolerance,
  millimetresFrom,
  type Reader,
  readQuantity,
  say,
  sayNumber,
  sayVolume,
  trueLitres,
  volumeAt,
  volumeDoubt,
} from '@sumpbook/fluid'
import type { RecipeBench, SumpNow, Units } from '../api/types.ts'
import { type Fault, faultParts, readLitres, withUnit } from '../fields/read.ts'
import { shopUnits } from '../say/units.ts'
import { type FieldFault, quarters, type Read, type Typed, whole } from './typed.ts'

/** What was seen of the level, in canonical units, and as it goes into the entry. */
export interface LevelSeen {
  litres: number
  /** Litres; without it the usual doubt of a level read off. */
  sd?: number
  entry: { volume: number | { low: number; high: number } } | { level: number }
  typed: Record<string, string>
}

/** What was typed of the level; above the brim by more than a slip of the eye it is a fault. */
export function readLevel({ levelBy, level, pumps }: Typed, bench: RecipeBench, reader: Reader): Read<LevelSeen> {
  if (levelBy === 'mark') {
    if (bench.fillVolume === null) return { seen: null }
    return { seen: { litres: bench.fillVolume, entry: { volume: bench.fillVolume }, typed: { volume: 'at the mark' } } }
  }
  if (level.trim() === '') return { seen: null }
  if (levelBy === 'quarter') return { seen: readQuarter(level, bench.fillVolume) }
  const seen = levelBy === 'dip' ? readDip(whole(level), bench, reader.units) : readVolume(whole(level), reader.units)
  if ('fault' in seen) return { fault: { field: 'level', ...seen.fault } }
  const over = overBrim(seen, pumps, bench, reader)
  return over === null ? { seen } : { fault: over }
}

/** By eye, to the nearest quarter: anything half a quarter up or down looks the same, so its sd is that of an even spread, half its width by √3. */
function readQuarter(level: string, fillVolume: number | null): LevelSeen | null {
  const at = quarters.indexOf(level as (typeof quarters)[number])
  if (at < 0 || fillVolume === null) return null
  const [litres, half] = [(fillVolume * (at + 1)) / 4, fillVolume / 8]
  const volume = { low: litres - half, high: litres + half }
  return { litres, sd: half / Math.sqrt(3), entry: { volume }, typed: { volume: `about ${level} of the mark` } }
}

type Seen = LevelSeen | { fault: Fault }

function readVolume(text: string, units: Units): Seen {
  const read = readLitres(text, units)
  if ('fault' in read) return read
  const litres = read.value!
  return { litres, entry: { volume: litres }, typed: { volume: withUnit(text, shopUnits[units].volumeWord) } }
}

function readDip(text: string, { dipTable }: RecipeBench, units: Units): Seen {
  const { length } = shopUnits[units]
  const found = text.trim()
  if (dipTable === null)
    return {
      fault: { found: say('a dip of {dip}', { dip: found }), expected: say('a volume: this sump has no dip table') },
    }
  const read = readQuantity(text, { kind: 'length', unit: length })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  const level = millimetresFrom(read.value, read.unit ?? length)
  const at = volumeAt(dipTable, level)
  if (at.outcome === 'outside') {
    return {
      fault: {
        found,
        expected: say('from {low} to {high} mm, as the dip table runs', {
          low: sayNumber(at.low, 0),
          high: sayNumber(at.high, 0),
        }),
      },
    }
  }
  return { litres: at.volume, entry: { level }, typed: { level: withUnit(text, length) } }
}

/** A level a little above the brim is a slip of the eye and is asked about; further up nothing stays in. */
function overBrim(
  { litres }: LevelSeen,
  pumps: Typed['pumps'],
  { capacity, fillVolume, holdUp }: RecipeBench,
  reader: Reader,
): FieldFault | null {
  const brim = capacity ?? (fillVolume === null ? null : 1.25 * fillVolume)
  const inLines = pumps === 'running' ? holdUp : 0
  if (brim === null || litres + inLines <= brimTolerance * brim) return null
  const volume = sayVolume(litres, reader)
  return {
    field: 'level',
    found:
      inLines > 0
        ? say('{volume}, with {lines} out in the lines', { volume, lines: sayVolume(inLines, reader) })
        : volume,
    expected: say('at most the brim, {volume}', { volume: sayVolume(brim, reader) }),
  }
}

/** All the fluid of the system in true litres: what was seen by the sump's own measure, and while the pumps run what is out in the lines. */
export function volumeOf(
  litres: number,
  { pumps }: Pick<Typed, 'pumps'>,
  { bench, mark }: Pick<SumpNow, 'bench' | 'mark'>,
) {
  const seen = trueLitres(litres, bench, mark)
  return { mean: seen + (pumps === 'running' ? bench.holdUp : 0), sd: volumeDoubt * seen }
}

/** The same, with what an eye tells apart. */
export function seenVolume({ litres, sd }: LevelSeen, typed: Typed, sump: SumpNow) {
  const volume = volumeOf(litres, typed, sump)
  return sd === undefined ? volume : { ...volume, sd: trueLitres(sd, sump.bench, sump.mark) }
}
