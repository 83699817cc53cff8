import {
  type BuildUp,
  type BuildUpMineral,
  balance,
  buildUp,
  type Minerals,
  message,
  say,
  sayNumber,
} from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import {
  type FieldRead,
  readConductivity,
  readDissolved,
  readHardness,
  readLitres,
  readPercent,
  readPlain,
} from '../fields/read.ts'
import { type FieldFaults, type FieldTexts, readTexts } from '../fields/read-texts.ts'

export type AheadKey =
  | 'fillVolume'
  | 'volume'
  | 'evaporation'
  | 'carryOff'
  | 'concentration'
  | 'target'
  | 'strength'
  | 'now'
  | 'limit'
  | 'present'
  | 'other'
  | 'inDays'
export type AheadTexts = FieldTexts<AheadKey>

/** How each mineral is said and typed. */
export const mineralWords: Readonly<
  Record<
    BuildUpMineral,
    { name: string; word: string; unit: string; unitName: string; decimals: number; read(text: string): FieldRead }
  >
> = {
  hardness: {
    name: message('Hardness'),
    word: message('hardness'),
    unit: 'ppm',
    unitName: message('ppm as CaCO3'),
    decimals: 0,
    read: (text) => readHardness(text),
  },
  chloride: {
    name: message('Chloride'),
    word: message('chloride'),
    unit: 'mg/L',
    unitName: 'mg/L',
    decimals: 0,
    read: (text) => readDissolved(text),
  },
  conductivity: {
    name: message('Conductivity'),
    word: message('conductivity'),
    unit: 'mS/cm',
    unitName: message('mS/cm at 25 °C'),
    decimals: 2,
    read: (text) => readConductivity(text),
  },
}

export interface AheadRead {
  values: Record<AheadKey, number | null>
  faults: FieldFaults<AheadKey>
  /** In words. */
  missing: string[]
}

export function readAhead(texts: AheadTexts, mineral: BuildUpMineral, units: Units): AheadRead {
  const litres = (text: string) => readLitres(text, units)
  const percent = (text: string) => readPercent(text)
  const ofMineral = mineralWords[mineral].read
  const { values, faults } = readTexts(texts, {
    fillVolume: (text) => readLitres(text, units, { above: 0 }),
    volume: litres,
    evaporation: litres,
    carryOff: litres,
    concentration: percent,
    target: percent,
    strength: percent,
    now: ofMineral,
    limit: ofMineral,
    present: ofMineral,
    other: ofMineral,
    inDays: (text) => readPlain(text, { min: 0, max: 3650 }),
  })
  const { fillVolume, volume } = values
  if (fillVolume !== null && volume !== null && volume > fillVolume) {
    faults.volume = { found: texts.volume.trim(), expected: say('at most the full mark: minerals are judged there') }
  }
  const word = say(mineralWords[mineral].word)
  const missing = [
    values.fillVolume === null ? say('the full mark') : '',
    values.evaporation === null ? say('what evaporates a day') : '',
    values.carryOff === null ? say('what is carried off a day') : '',
    values.target === null && values.strength === null ? say('the target or the strength of the top-ups') : '',
    values.now === null ? say('the {mineral} in it now', { mineral: word }) : '',
    values.present === null ? say('the {mineral} of the water poured now', { mineral: word }) : '',
  ].filter((words) => words !== '')
  return { values, faults, missing }
}

/** One way on from today. */
export interface Future {
  /** Which water. */
  name: string
  /** At the full mark, week by week, from today's on. */
  series: { day: number; value: number }[]
  /** Days from now; null if never. */
  atLimit: number | null
  /** From when on it lies under the limit again, after that. */
  left: number | null
  steady: number | null
}

export interface Ahead {
  cycles: number | null
  /** Holds the target; null where nothing is topped up, or no mix holds it. */
  topUpStrength: number | null
  /** What is reckoned with. */
  strength: number
  /** The water of now for ever, and where another is named the change to it. */
  futures: Future[]
}

/** The two futures of a sump's minerals, a step a week; null while something is missing. */
export function aheadOf(
  { values, faults, missing }: AheadRead,
  { mineral, weeks, names }: { mineral: BuildUpMineral; weeks: number; names: { present: string; other: string } },
): Ahead | null {
  if (missing.length > 0 || Object.keys(faults).length > 0) return null
  const { fillVolume, evaporation, carryOff, target, concentration, now, limit, present, other, inDays } = values
  const holding = balance({
    volume: fillVolume!,
    evaporation: evaporation!,
    carryOff: carryOff!,
    concentration: concentration ?? target ?? 0,
    target: target ?? 0,
    hardness: 0,
    waterHardness: 0,
    days: [],
  })
  const strength = values.strength ?? holding.topUpStrength ?? 0
  const days = Array.from({ length: weeks + 1 }, (_, week) => 7 * week)
  const change = Math.max(inDays ?? 0, 0)
  const future = (name: string, waters: { value: number; from: number }[]): Future & { all: BuildUp } => {
    const all = buildUp({
      fillVolume: fillVolume!,
      volume: values.volume ?? fillVolume!,
      evaporation: evaporation!,
      carryOff: carryOff!,
      now: only(mineral, now),
      waters: waters.map(({ value, from }, i) => ({ id: String(i), from, strength, ...only(mineral, value) })),
      limits: only(mineral, limit),
      days,
    })
    return {
      all,
      name,
      series: all.series.map((point) => ({ day: point.day, value: point[mineral]! })),
      atLimit: all.atLimit[mineral].reached,
      left: all.atLimit[mineral].left,
      steady: all.steady[mineral],
    }
  }
  const first = future(names.present, [{ value: present!, from: 0 }])
  const second =
    other === null
      ? null
      : future(
          names.other,
          change === 0
            ? [{ value: other, from: 0 }]
            : [
                { value: present!, from: 0 },
                { value: other, from: change },
              ],
        )
  const plain = ({ all: _, ...rest }: Future & { all: BuildUp }): Future => rest
  return {
    cycles: first.all.cycles,
    topUpStrength: target === null ? null : holding.topUpStrength,
    strength,
    futures: second === null ? [plain(first)] : [plain(first), plain(second)],
  }
}

const only = (mineral: BuildUpMineral, value: number | null): Minerals => ({
  hardness: null,
  chloride: null,
  conductivity: null,
  [mineral]: value,
})

/** A figure of a mineral with its unit. */
export const sayMineral = (value: number, mineral: BuildUpMineral): string =>
  `${sayNumber(value, mineralWords[mineral].decimals)} ${mineralWords[mineral].unit}`
