import { litresTo, type MineralLimits, minerals, say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { type Fault, type FieldRead, readDissolved, readHardness, readLitres, readPlain } from '../fields/read.ts'
import { type FieldFaults, type FieldTexts, readTexts } from '../fields/read-texts.ts'
import { shopUnits } from '../say/units.ts'
import { mineralNames, type WaterKey, type WaterTexts } from './water-texts.ts'

/** A water as read: its minerals, and its price a litre. */
export interface WaterRead {
  id: string
  values: Record<WaterKey, number | null>
  faults: FieldFaults<WaterKey>
}

export function readWater(id: string, texts: WaterTexts, units: Units): WaterRead {
  const dissolved = (text: string): FieldRead => readDissolved(text, { min: 0, max: 100_000 })
  const { values, faults } = readTexts(texts, {
    hardness: (text) => readHardness(text, { min: 0, max: 100_000 }),
    chloride: dissolved,
    sulfate: dissolved,
    nitrate: dissolved,
    cost: (text) => readPlain(text, { min: 0, max: 1e6 }),
  })
  const perLitre = values.cost === null ? null : values.cost * litresTo(1, shopUnits[units].volume)
  return { id, values: { ...values, cost: perLitre }, faults }
}

export type LimitKey = 'hardnessLow' | 'hardness' | 'chloride' | 'sulfate' | 'nitrate' | 'cycles' | 'volume'
export type LimitTexts = FieldTexts<LimitKey>

export interface LimitsRead {
  limits: MineralLimits
  cycles: number | null
  volume: number | null
  faults: FieldFaults<LimitKey>
}

/** The limits as typed; those of a sump are divided by its cycles elsewhere. */
export function readLimits(texts: LimitTexts, units: Units): LimitsRead {
  const dissolved = (text: string): FieldRead => readDissolved(text, { min: 0, max: 100_000 })
  const { values, faults } = readTexts(texts, {
    hardnessLow: (text) => readHardness(text, { min: 0, max: 100_000 }),
    hardness: (text) => readHardness(text, { min: 0, max: 100_000 }),
    chloride: dissolved,
    sulfate: dissolved,
    nitrate: dissolved,
    cycles: (text) => readPlain(text, { min: 1, max: 1000 }),
    volume: (text) => readLitres(text, units, { above: 0 }),
  })
  const { hardnessLow, hardness, chloride, sulfate, nitrate, cycles, volume } = values
  if (hardnessLow !== null && hardness !== null && hardnessLow > hardness) {
    faults.hardnessLow = {
      found: texts.hardnessLow.trim(),
      expected: say('at most {high}, the most wanted', { high: texts.hardness.trim() }),
    }
  }
  const high = (value: number | null) => (value === null ? {} : { high: value })
  const limits: MineralLimits = {
    ...(hardness === null && hardnessLow === null
      ? {}
      : { hardness: { ...high(hardness), ...(hardnessLow === null ? {} : { low: hardnessLow }) } }),
    ...(chloride === null ? {} : { chloride: high(chloride) }),
    ...(sulfate === null ? {} : { sulfate: high(sulfate) }),
    ...(nitrate === null ? {} : { nitrate: high(nitrate) }),
  }
  return { limits, cycles, volume, faults }
}

/** What a blend cannot do without: whatever is limited must be known of each water, and a price of all or of none. */
export function unknownFaults(
  waters: readonly WaterRead[],
  limits: MineralLimits,
): Map<string, Partial<Record<WaterKey, Fault>>> {
  const isPriced = waters.some(({ values }) => values.cost !== null)
  return new Map(
    waters.map(({ id, values, faults }) => {
      const missing: Partial<Record<WaterKey, Fault>> = {}
      for (const mineral of minerals) {
        if (limits[mineral] === undefined || values[mineral] !== null || faults[mineral] !== undefined) continue
        missing[mineral] = {
          found: say('nothing'),
          expected: say('its {mineral}, since {mineral} is limited', { mineral: say(mineralNames[mineral].word) }),
        }
      }
      if (isPriced && values.cost === null && faults.cost === undefined) {
        missing.cost = { found: say('nothing'), expected: say('its price, or no price at any water') }
      }
      return [id, { ...missing, ...faults }]
    }),
  )
}
