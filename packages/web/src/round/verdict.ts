import {
  type Advice,
  advise,
  brimTolerance,
  concentrationFromBrix,
  type Figure,
  message,
  millimetresFrom,
  type Reader,
  readQuantity,
  say,
  sayAbout,
  sayNumber,
  sayPercent,
  sayVolume,
  standingAfter,
  trueLitres,
  trueMarks,
  volumeAt,
  volumeDoubt,
  volumeToPour,
  weighReading,
} from '@sumpbook/fluid'
import type { RecipeBench, SumpNow, Units } from '../api/types.ts'
import { type Fault, faultParts, readLitres, withUnit } from '../fields/read.ts'
import { sayBand, shopUnits } from '../say/units.ts'
import { isOtherMark } from '../standing/true-litres.ts'

/** How the level was seen: litres on a glass, "at the mark", quarters of it by eye, or a dipstick. */
export type LevelBy = 'volume' | 'mark' | 'quarter' | 'dip'

/** What an eye tells apart of a full mark; the full one is "at the mark". */
export const quarters = ['¼', '½', '¾'] as const

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
  /** What the person says where it is right all the same. */
  yes: string
}

/** What was seen of the level, in canonical units, and as it goes into the entry. */
export interface LevelSeen {
  litres: number
  /** Litres; without it the usual doubt of a level read off. */
  sd?: number
  entry: { volume: number | { low: number; high: number } } | { level: number }
  typed: Record<string, string>
}

/** What follows from what was typed, worked out on the device. */
export interface Verdict {
  level: LevelSeen | null
  brix: number | null
  concentration: Figure | null
  /** "at the foot of its band of 6–10 %". Empty without a strength or a band. */
  stands: string
  /** Null until there is a strength, and while a record of the sump is in doubt: what is read now helps to settle it. */
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
 * server's. A reading that fits what the records lead to expect is weighed with it; one that is far off is asked about
 * once, and then counts alone. Text that does not parse, or cannot be, is a fault at its field; what is hardly so is a question.
 *
 * @param now milliseconds since 1970: what is expected holds for the hours after it was worked out
 */
export function verdictOf(typed: Typed, sump: SumpNow, reader: Reader, now: number): Verdict {
  const level = readLevel(typed, sump.bench, reader)
  const brix = readBrix(typed.brix, sump.bench)
  const seenLevel = 'seen' in level ? level.seen : null
  const seenBrix = 'seen' in brix ? brix.seen : null
  const strength = seenBrix === null ? null : strengthOf(seenBrix, sump.bench)
  const alone = standingAfter([
    {
      kind: 'reading',
      concentration: strength !== null && 'mean' in strength ? strength : null,
      volume: seenLevel === null ? null : seenVolume(seenLevel, typed, sump),
    },
  ])
  const weighed = seenBrix === null ? null : weighedWith(seenBrix, sump, now)
  const concentration = weighed?.outcome === 'fits' ? weighed.concentration : alone.concentration
  const bench = trueMarks(sump.bench, sump.mark)
  const known = sump.volume === null ? null : volumeToPour(sump.volume, sump.mark, bench)
  const volume = seenLevel === null ? known : alone.volume
  const faults = [level, brix].flatMap((read) => ('fault' in read ? [read.fault] : []))
  const isAdvised = seenBrix !== null && faults.length === 0 && sump.doubts.length === 0
  const found = { level: seenLevel, brix: seenBrix, concentration, isFar: weighed?.outcome === 'far' }
  return {
    level: seenLevel,
    brix: seenBrix,
    concentration,
    stands: standsWords(concentration, sump.bench),
    advice: isAdvised ? advise({ volume, concentration }, bench, reader) : null,
    faults,
    questions: questionsOf(typed, found, sump, reader).filter(({ pointer, text }) => typed.confirmed[pointer] !== text),
    notes: notesOf(typed, { seenLevel, strength, known }, sump, reader),
  }
}

/** What is expected is worked out anew by the book whenever it is asked; a device out of reach goes on with it for so long. */
const expectedForMs = 12 * 3_600_000

/** What a refractometer is expected to show; null where nothing is, or where it was worked out too long ago. */
export function expectedOf({ expected, concentration, asOf, doubts }: SumpNow, now: number) {
  const isFresh = Math.abs(now - Date.parse(asOf)) < expectedForMs
  if (expected === null || concentration === null || !isFresh || doubts.length > 0) return null
  return { concentration, expected }
}

/** "4.9–5.6", to the tenth. */
export const sayExpected = ({ brix }: { brix: { low90: number; high90: number } }): string =>
  `${sayNumber(Math.max(0, brix.low90), 1)}–${sayNumber(brix.high90, 1)}`

export function weighedWith(brix: number, sump: SumpNow, now: number) {
  const standing = expectedOf(sump, now)
  return standing === null ? null : weighReading(brix, standing)
}

function readLevel({ levelBy, level, pumps }: Typed, bench: RecipeBench, reader: Reader): Read<LevelSeen> {
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

/** "3." is on its way to "3.4": no fault while it is typed. */
const whole = (text: string) => text.trim().replace(/(?<=\d)[.,]$/, '')

function readBrix(text: string, bench: RecipeBench): Read<number> {
  if (text.trim() === '') return { seen: null }
  const read = readQuantity(whole(text), { kind: 'brix', unit: '°Brix' })
  if ('fault' in read) return { fault: { field: 'brix', ...faultParts(read.fault) } }
  if (read.value < 0 || read.value > 95) {
    return { fault: { field: 'brix', found: text.trim(), expected: say('from 0 to 95 °Brix') } }
  }
  const strength = strengthOf(read.value, bench)
  if (strength !== null && 'mean' in strength && strength.mean > 100) {
    const found = say('{brix} °Brix, which would be {strength} %', {
      brix: text.trim(),
      strength: sayNumber(strength.mean, 0),
    })
    return { fault: { field: 'brix', found, expected: say('no more than neat concentrate, 100 %') } }
  }
  return { seen: read.value }
}

type Strength = { mean: number; sd: number } | { unknown: string } | null

export function strengthOf(brix: number, { brixChart, brixFactor, resolution }: RecipeBench): Strength {
  if (brixChart === null && brixFactor === null) {
    return {
      unknown: say(
        'The Brix factor of this fluid is not known, so no strength follows. It stands on the fluid’s sheet; enter it under Shop.',
      ),
    }
  }
  const read =
    brixChart === null
      ? concentrationFromBrix({ brix, resolution, factor: brixFactor! })
      : concentrationFromBrix({ brix, resolution, chart: brixChart })
  if (read.outcome === 'off-chart') {
    return {
      unknown: say('The fluid’s chart runs from {low} to {high} °Brix; {brix} lies outside it.', {
        low: sayNumber(read.low, 1),
        high: sayNumber(read.high, 1),
        brix: sayNumber(brix, 1),
      }),
    }
  }
  return { mean: read.concentration, sd: read.sd }
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

function seenVolume({ litres, sd }: LevelSeen, typed: Typed, sump: SumpNow) {
  const volume = volumeOf(litres, typed, sump)
  return sd === undefined ? volume : { ...volume, sd: trueLitres(sd, sump.bench, sump.mark) }
}

/** Where in its band, in words: its lowest and highest sixth are its foot and its top. */
export function standsWords(concentration: Pick<Figure, 'mean'> | null, { band }: Pick<RecipeBench, 'band'>): string {
  if (concentration === null || band === null) return ''
  const { mean } = concentration
  const edge = (band.high - band.low) / 6
  const of = { band: sayBand(band) }
  if (mean < band.low) return say('under its band of {band}', of)
  if (mean > band.high) return say('above its band of {band}', of)
  if (mean < band.low + edge) return say('at the foot of its band of {band}', of)
  return mean > band.high - edge ? say('at the top of its band of {band}', of) : say('in its band of {band}', of)
}

const isRight = message('Yes, that is right')

interface Found {
  level: LevelSeen | null
  brix: number | null
  concentration: Figure | null
  /** Whether the reading is far from what was expected. */
  isFar: boolean
}

function questionsOf(
  typed: Typed,
  { level, brix, concentration, isFar }: Found,
  { bench, expected }: SumpNow,
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
    const question = say('{volume} is above the full mark, {mark}. Is that right?', {
      volume: sayVolume(level.litres, reader),
      mark: sayVolume(bench.fillVolume, reader),
    })
    questions.push({ field: 'level', pointer, text: typed.level, question, yes: say(isRight) })
  }
  const ofBrix = brixQuestion(brix, { concentration, expected: isFar ? expected : null }, bench, reader)
  if (ofBrix !== null) questions.push({ field: 'brix', pointer: '/brix', text: typed.brix, ...ofBrix })
  return questions
}

/** One question is enough: the one that says most. */
function brixQuestion(
  brix: number | null,
  { concentration, expected }: Pick<SumpNow, 'concentration' | 'expected'>,
  { target }: RecipeBench,
  reader: Reader,
): Pick<FieldQuestion, 'question' | 'yes'> | null {
  if (brix === null) return null
  const read = sayNumber(brix, 1)
  if (expected !== null) {
    const question = say('{read} is far from the {expected} expected: read again?', {
      read,
      expected: sayExpected(expected),
    })
    return { question, yes: say('It reads {read}', { read }) }
  }
  if (brix > unusualBrix) {
    return {
      question: say('{read} °Brix is far above what a coolant reads. Is that right?', { read }),
      yes: say(isRight),
    }
  }
  if (concentration !== null && target !== null && concentration.mean > unusualStrength * target) {
    const question = say('That would be {strength}, more than three times the target of {target}. Is that right?', {
      strength: sayPercent(concentration.mean, reader),
      target: sayPercent(target, reader),
    })
    return { question, yes: say(isRight) }
  }
  return null
}

function notesOf(
  { pumps }: Typed,
  { seenLevel, strength, known }: { seenLevel: LevelSeen | null; strength: Strength; known: Figure | null },
  sump: SumpNow,
  reader: Reader,
): string[] {
  const { bench, mark, doubts } = sump
  const notes: string[] = []
  if (strength !== null && 'unknown' in strength) notes.push(strength.unknown)
  if (strength !== null && doubts.length > 0) {
    notes.push(
      say('No recipe while a record of this sump does not fit: write this reading down, and see what fits then.'),
    )
  } else if (seenLevel === null && strength !== null && known !== null) {
    notes.push(
      say('No level read now: reckoned with {volume}, as the records have it.', { volume: sayAbout(known, reader) }),
    )
  }
  const { fillVolume, minVolume: suction } = trueMarks(bench, mark)
  if (seenLevel !== null && isOtherMark(bench.fillVolume, fillVolume)) {
    notes.push(
      say('Its mark is reckoned as {mark}, as the pours tell: so about {volume} in it.', {
        mark: sayVolume(fillVolume!, reader),
        volume: sayVolume(trueLitres(seenLevel.litres, bench, mark), reader),
      }),
    )
  }
  if (seenLevel !== null && suction !== null && volumeOf(seenLevel.litres, { pumps }, sump).mean < suction) {
    notes.push(say('The level is under the pumps’ suction: keep the pumps off until it is back.'))
  }
  if (seenLevel !== null && pumps === 'running' && bench.holdUp === 0) {
    notes.push(say('With the pumps running the level reads low: what this sump’s lines hold is not known.'))
  }
  return notes
}
