import { requireRange } from '../require.ts'

/** How a label writes an amount of product in the mix. */
export type LabelUnit = 'mL/L' | '%' | 'g/L' | 'mg/L' | 'L/1000 L' | 'fl oz/gal'

/** What is measured out: a liquid in millilitres, a powder in grams. */
export type DoseUnit = 'mL' | 'g'

/** An amount of product in a litre of mix. */
export interface PerLitre {
  amount: number
  unit: DoseUnit
}

/** A US gallon is 128 US fluid ounces, and 3.785411784 L. */
const flOzPerGal = 1000 / 128

const factors: Record<LabelUnit, PerLitre> = {
  'mL/L': { amount: 1, unit: 'mL' },
  // By volume: 1 mL in 100 mL.
  '%': { amount: 10, unit: 'mL' },
  'L/1000 L': { amount: 1, unit: 'mL' },
  'fl oz/gal': { amount: flOzPerGal, unit: 'mL' },
  'g/L': { amount: 1, unit: 'g' },
  'mg/L': { amount: 0.001, unit: 'g' },
}

/**
 * What a label says, in millilitres or grams of product in a litre of mix.
 *
 *     1 % by volume = 10 mL/L        1 US fl oz/US gal = 1000/128 mL/L = 7.8125 mL/L        1 mg/L = 0.001 g/L
 *
 * Of the product as it is delivered, not of what is active in it: a label that speaks of active matter is divided by its share first.
 *
 * Source: definitions of the units.
 *
 * @throws {RangeError} an amount below 0
 * @example perLitre(0.15, '%') // { amount: 1.5, unit: 'mL' }
 */
export function perLitre(amount: number, unit: LabelUnit): PerLitre {
  requireRange('amount', amount, { min: 0 })
  const { amount: factor, unit: measured } = factors[unit]
  return { amount: amount * factor, unit: measured }
}
