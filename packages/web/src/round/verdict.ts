import {
  type Advice,
  advise,
  brimTolerance,
  concentrationFromBrix,
  type Figure,
  millimetresFrom,
  type Reader,
  readQuantity,
  sayNumber,
  sayPercent,
  sayVolume,
  standingAfter,
  volumeAt,
  volumeDoubt,
} from '@sumpbook/fluid'
import type { RecipeBench, SumpNow, Units } from '../api/types.ts'
import { type Fault, faultParts, readLitres, withUnit } from '../fields/read.ts'
import { sayBand, shopUnits } from '../say/units.ts'

/** How the level was seen: litres on a glass, "at the mark", or a dipstick. */
export type LevelBy = 'volume' | 'mark' | 'dip'

/** What was typed at one sump, as it stands in the fields. */
export interface Typed {
  levelBy: LevelBy
  level: string
  pumps: 'running' | 'stopped'
  brix: string
  /** Pointers whose implausible value the person said is right, with the text they said it of. */
  confirmed: Readonly<Record<string, string>>
}

export const nothingTyped: Typed = { levelBy: 'volume', level: '', pumps: 'stopped', brix: '', confirmed: {} }

/** What cannot be: shown at the field, nothing is written. */
export interface FieldFault {
  field: 'level' | 'brix'
  found: string
  expected: string
}

/** What is possible but hardly so: asked once. */
export interface FieldQuestion {
  field: 'level' | 'brix'
  /** Its place in the entry. */
  pointer: '/volume' | '/level' | '/brix'
  /** The text it is asked of; the answer holds for that text alone. */
  text: string
  question: string
}

/** What was seen of the level, in canonical units, and as it goes into the entry. */
export interface LevelSeen {
  litres: number
  entry: { volume: number } | { level: number }
  typed: Record<string, string>
}

/** What follows from what was typed, worked out on the device. */
export interface Verdict {
  level: LevelSeen | null
  brix: number | null
  concentration: Figure | null
  /** "at the foot of its band of 6–10 %". Empty without a strength or a band. */
  stands: string
  /** Null until there is a strength. */
  advice: Advice | null
  faults: FieldFault[]
  /** Not yet answered. */
  questions: FieldQuestion[]
  /** What to know beside the advice. */
  notes: string[]
}

/** A hand refractometer's coolant readings stay far under this (common practice). */
const unusualBrix = 25
/** A strength this many times the target is more often a slip than a strength. */
const unusualStrength = 3

type Read<T> = { seen: T | null } | { fault: FieldFault }

/**
 * The verdict on what was typed at one sump: strength, recipe and words at once, by the same computation as the
 * server's. Text that does not parse, or cannot be, is a fault at its field; what is hardly so is a question.
 */
export function verdictOf(typed: Typed, sump: SumpNow, reader: Reader): Verdict {
  const level = readLevel(typed, sump.bench, reader)
  const brix = readBrix(typed.brix, sump.bench)
  const seenLevel = 'seen' in level ? level.seen : null
  const seenBrix = 'seen' in brix ? brix.seen : null
  const strength = seenBrix === null ? null : strengthOf(seenBrix, sump.bench)
  const standing = standingAfter([
    {
      kind: 'reading',
      concentration: strength !== null && 'mean' in strength ? strength : null,
      volume: seenLevel === null ? null : volumeOf(seenLevel.litres, typed, sump.bench),
    },
  ])
  const volume = seenLevel === null ? sump.volume : standing.volume
  const { concentration } = standing
  const faults = [level, brix].flatMap((read) => ('fault' in read ? [read.fault] : []))
  const isAdvised = seenBrix !== null && faults.length === 0
  return {
    level: seenLevel,
    brix: seenBrix,
    concentration,
    stands: standsWords(concentration, sump.bench),
    advice: isAdvised ? advise({ volume, concentration }, sump.bench, reader) : null,
    faults,
    questions: questionsOf(typed, { level: seenLevel, brix: seenBrix, concentration }, sump, reader).filter(
      ({ pointer, text }) => typed.confirmed[pointer] !== text,
    ),
    notes: notesOf(typed, { seenLevel, strength }, sump, reader),
  }
}

function readLevel({ levelBy, level, pumps }: Typed, bench: RecipeBench, reader: Reader): Read<LevelSeen> {
  if (levelBy === 'mark') {
    if (bench.fillVolume === null) return { seen: null }
    return { seen: { litres: bench.fillVolume, entry: { volume: bench.fillVolume }, typed: { volume: 'at the mark' } } }
  }
  if (level.trim() === '') return { seen: null }
  const seen = levelBy === 'dip' ? readDip(whole(level), bench, reader.units) : readVolume(whole(level), reader.units)
  if ('fault' in seen) return { fault: { field: 'level', ...seen.fault } }
  const over = overBrim(seen, pumps, bench, reader)
  return over === null ? { seen } : { fault: over }
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
    return { fault: { found: `a dip of ${found}`, expected: 'a volume: this sump has no dip table' } }
  const read = readQuantity(text, { kind: 'length', unit: length })
  if ('fault' in read) return { fault: faultParts(read.fault) }
  const level = millimetresFrom(read.value, read.unit ?? length)
  const at = volumeAt(dipTable, level)
  if (at.outcome === 'outside') {
    return {
      fault: { found, expected: `from ${sayNumber(at.low, 0)} to ${sayNumber(at.high, 0)} mm, as the dip table runs` },
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
  const lines = inLines > 0 ? `, with ${sayVolume(inLines, reader)} out in the lines` : ''
  return {
    field: 'level',
    found: sayVolume(litres, reader) + lines,
    expected: `at most the brim, ${sayVolume(brim, reader)}`,
  }
}

/** "3." is on its way to "3.4": no fault while it is typed. */
const whole = (text: string) => text.trim().replace(/(?<=\d)[.,]$/, '')

function readBrix(text: string, bench: RecipeBench): Read<number> {
  if (text.trim() === '') return { seen: null }
  const read = readQuantity(whole(text), { kind: 'brix', unit: '°Brix' })
  if ('fault' in read) return { fault: { field: 'brix', ...faultParts(read.fault) } }
  if (read.value < 0 || read.value > 95) {
    return { fault: { field: 'brix', found: text.trim(), expected: 'from 0 to 95 °Brix' } }
  }
  const strength = strengthOf(read.value, bench)
  if (strength !== null && 'mean' in strength && strength.mean > 100) {
    const found = `${text.trim()} °Brix, which would be ${sayNumber(strength.mean, 0)} %`
    return { fault: { field: 'brix', found, expected: 'no more than neat concentrate, 100 %' } }
  }
  return { seen: read.value }
}

type Strength = { mean: number; sd: number } | { unknown: string } | null

function strengthOf(brix: number, { brixChart, brixFactor, resolution }: RecipeBench): Strength {
  if (brixChart === null && brixFactor === null) {
    return {
      unknown:
        'The Brix factor of this fluid is not known, so no strength follows. It stands on the fluid’s sheet; enter it under Shop.',
    }
  }
  const read =
    brixChart === null
      ? concentrationFromBrix({ brix, resolution, factor: brixFactor! })
      : concentrationFromBrix({ brix, resolution, chart: brixChart })
  if (read.outcome === 'off-chart') {
    return {
      unknown: `The fluid’s chart runs from ${sayNumber(read.low, 1)} to ${sayNumber(read.high, 1)} °Brix; ${sayNumber(brix, 1)} lies outside it.`,
    }
  }
  return { mean: read.concentration, sd: read.sd }
}

/** All the fluid of the system: what was seen, and while the pumps run what is out in the lines. */
function volumeOf(litres: number, { pumps }: Pick<Typed, 'pumps'>, { holdUp }: RecipeBench) {
  return { mean: litres + (pumps === 'running' ? holdUp : 0), sd: volumeDoubt * litres }
}

/** Where in its band, in words: its lowest and highest sixth are its foot and its top. */
export function standsWords(concentration: Pick<Figure, 'mean'> | null, { band }: Pick<RecipeBench, 'band'>): string {
  if (concentration === null || band === null) return ''
  const { mean } = concentration
  const edge = (band.high - band.low) / 6
  const of = `its band of ${sayBand(band)}`
  if (mean < band.low) return `under ${of}`
  if (mean > band.high) return `above ${of}`
  if (mean < band.low + edge) return `at the foot of ${of}`
  return mean > band.high - edge ? `at the top of ${of}` : `in ${of}`
}

function questionsOf(
  typed: Typed,
  { level, brix, concentration }: { level: LevelSeen | null; brix: number | null; concentration: Figure | null },
  { bench }: SumpNow,
  reader: Reader,
): FieldQuestion[] {
  const questions: FieldQuestion[] = []
  if (
    level !== null &&
    typed.levelBy !== 'mark' &&
    bench.fillVolume !== null &&
    level.litres > 1.005 * bench.fillVolume
  ) {
    const pointer = 'volume' in level.entry ? '/volume' : '/level'
    const question = `${sayVolume(level.litres, reader)} is above the full mark, ${sayVolume(bench.fillVolume, reader)}.`
    questions.push({ field: 'level', pointer, text: typed.level, question })
  }
  if (brix !== null && brix > unusualBrix) {
    const question = `${sayNumber(brix, 1)} °Brix is far above what a coolant reads.`
    questions.push({ field: 'brix', pointer: '/brix', text: typed.brix, question })
  } else if (concentration !== null && bench.target !== null && concentration.mean > unusualStrength * bench.target) {
    const question = `That would be ${sayPercent(concentration.mean, reader)}, more than three times the target of ${sayPercent(bench.target, reader)}.`
    questions.push({ field: 'brix', pointer: '/brix', text: typed.brix, question })
  }
  return questions
}

function notesOf(
  { pumps }: Typed,
  { seenLevel, strength }: { seenLevel: LevelSeen | null; strength: Strength },
  { bench, volume }: SumpNow,
  reader: Reader,
): string[] {
  const notes: string[] = []
  if (strength !== null && 'unknown' in strength) notes.push(strength.unknown)
  if (seenLevel === null && strength !== null && volume !== null) {
    notes.push(`No level read now: reckoned with ${sayVolume(volume.mean, reader)} from the records.`)
  }
  if (
    seenLevel !== null &&
    bench.minVolume !== null &&
    volumeOf(seenLevel.litres, { pumps }, bench).mean < bench.minVolume
  ) {
    notes.push('The level is under the pumps’ suction: keep the pumps off until it is back.')
  }
  if (seenLevel !== null && pumps === 'running' && bench.holdUp === 0) {
    notes.push('With the pumps running the level reads low: what this sump’s lines hold is not known.')
  }
  return notes
}
