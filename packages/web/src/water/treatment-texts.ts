import { litresTo, message, say, type TreatmentQuestion } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { readDissolved, readHardness, readLitres, readPercent, readPlain } from '../fields/read.ts'
import { type FieldFaults, type FieldTexts, readTexts } from '../fields/read-texts.ts'
import { shopUnits } from '../say/units.ts'

export type TreatmentKey =
  | 'demand'
  | 'peak'
  | 'hardness'
  | 'tds'
  | 'waterPrice'
  | 'makes'
  | 'price'
  | 'recovery'
  | 'rejection'
  | 'upkeep'
  | 'resin'
  | 'capacity'
  | 'resinPrice'
  | 'saving'
  | 'years'
export type TreatmentTexts = FieldTexts<TreatmentKey>

export interface TreatmentRead {
  /** Null while something is missing. */
  question: TreatmentQuestion | null
  faults: FieldFaults<TreatmentKey>
  /** In words. */
  missing: string[]
}

/** What is asked of a unit, of resin, or of both; prices of water are for the shop's unit of volume. */
export function readTreatment(texts: TreatmentTexts, units: Units): TreatmentRead {
  const money = (text: string) => readPlain(text, { min: 0, max: 1e9 })
  const { values, faults } = readTexts(texts, {
    demand: (text) => readLitres(text, units, { above: 0 }),
    peak: (text) => readPlain(text, { min: 1, max: 100 }),
    hardness: (text) => readHardness(text),
    tds: (text) => readDissolved(text),
    waterPrice: money,
    makes: (text) => readLitres(text, units, { above: 0 }),
    price: money,
    recovery: (text) => readPercent(text, { above: 0, max: 100 }),
    rejection: (text) => readPercent(text),
    upkeep: money,
    resin: (text) => readLitres(text, units, { above: 0 }),
    capacity: (text) => readPlain(text, { above: 0, max: 1000 }),
    resinPrice: money,
    saving: money,
    years: (text) => readPlain(text, { above: 0, max: 100 }),
  })
  const unit = part({ values, keys: ['makes', 'price', 'recovery', 'rejection'] })
  const resin = part({ values, keys: ['resin', 'capacity', 'resinPrice'] })
  const missing = [
    values.demand === null ? say('what is used a day') : '',
    values.hardness === null ? say('the tap’s hardness') : '',
    ...[...unit.missing, ...resin.missing].map((key) => say(words[key])),
    unit.isEmpty && resin.isEmpty ? say('a unit or resin') : '',
  ].filter((each) => each !== '')
  if (missing.length > 0 || Object.keys(faults).length > 0) return { question: null, faults, missing }
  const question: TreatmentQuestion = {
    demand: values.demand!,
    peak: values.peak ?? 1.5,
    tap: {
      tds: values.tds,
      hardness: values.hardness!,
      costPerLitre: (values.waterPrice ?? 0) * litresTo(1, shopUnits[units].volume),
    },
    unit: unit.isEmpty
      ? null
      : {
          litresPerDay: values.makes!,
          price: values.price!,
          recovery: values.recovery! / 100,
          rejection: values.rejection! / 100,
          upkeepPerYear: values.upkeep ?? 0,
        },
    polisher: resin.isEmpty
      ? null
      : { resinLitres: values.resin!, capacityPerLitre: values.capacity!, price: values.resinPrice! },
    fluidSaving: values.saving ?? 0,
    years: values.years ?? 5,
  }
  return { question, faults, missing }
}

const words = {
  makes: message('what the unit makes a day'),
  price: message('the unit’s price'),
  recovery: message('its recovery'),
  rejection: message('its rejection'),
  resin: message('the litres of resin'),
  capacity: message('the resin’s capacity'),
  resinPrice: message('the price of a filling'),
} as const
type PlantKey = keyof typeof words

/** A part of the plant: not there where none of its fields is filled, else with what it lacks. */
function part({ values, keys }: { values: Record<TreatmentKey, number | null>; keys: readonly PlantKey[] }): {
  isEmpty: boolean
  missing: PlantKey[]
} {
  const missing = keys.filter((key) => values[key] === null)
  const isEmpty = missing.length === keys.length
  return { isEmpty, missing: isEmpty ? [] : missing }
}
