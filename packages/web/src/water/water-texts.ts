import { litresTo, type Mineral, message } from '@sumpbook/fluid'
import type { Thing, Units } from '../api/types.ts'
import type { FieldTexts } from '../fields/read-texts.ts'
import { fieldFigure, shopUnits } from '../say/units.ts'
import { figureOfWater } from './analyses.ts'

/** As `fluid` has them; named here, so that this file does not bring the solver with it. */
const minerals: readonly Mineral[] = ['hardness', 'chloride', 'sulfate', 'nitrate']

/** How each is said, at the head of a line and inside one. */
export const mineralNames: Readonly<Record<Mineral, { name: string; word: string }>> = {
  hardness: { name: message('Hardness'), word: message('hardness') },
  chloride: { name: message('Chloride'), word: message('chloride') },
  sulfate: { name: message('Sulfate'), word: message('sulfate') },
  nitrate: { name: message('Nitrate'), word: message('nitrate') },
}

export type WaterKey = Mineral | 'cost'
export const waterKeys: readonly WaterKey[] = [...minerals, 'cost']
export type WaterTexts = FieldTexts<WaterKey>

/** A water of the book as texts; its price for the shop's unit of volume. */
export function waterTexts(water: Thing, units: Units): WaterTexts {
  const cost = figureOfWater(water, 'costPerLitre')
  return {
    ...(Object.fromEntries(minerals.map((key) => [key, figureText(figureOfWater(water, key))])) as Record<
      Mineral,
      string
    >),
    cost: figureText(cost === null ? null : cost / litresTo(1, shopUnits[units].volume)),
  }
}

const figureText = (value: number | null) => (value === null ? '' : fieldFigure(value))
