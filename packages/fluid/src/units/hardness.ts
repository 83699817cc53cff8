import type { MgPerLitre } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { scaleOf } from './scale.ts'

/**
 * Units of water hardness. `ppm`: mg/L as CaCO3, the canonical one. `dH`: German degree. `gpg`: grain of CaCO3 per US
 * gallon. `clark`: English degree, grain of CaCO3 per imperial gallon. `fH`: French degree. `mmol/L`: calcium and magnesium together.
 */
export type HardnessUnit = 'ppm' | 'dH' | 'gpg' | 'clark' | 'fH' | 'mmol/L'

/** g/mol, from the abridged standard atomic weights (IUPAC 2021): Ca 40.078, C 12.011, O 15.999. */
const calciumCarbonate = 40.078 + 12.011 + 3 * 15.999
const calciumOxide = 40.078 + 15.999

/** mg, exact: a grain is 1/7000 of the international avoirdupois pound. */
const grain = 64.79891

const scale = scaleOf<HardnessUnit>('hardness', {
  ppm: 1,
  /** 10 mg of CaO a litre (DIN 38409-6). */
  dH: (10 * calciumCarbonate) / calciumOxide,
  gpg: grain / 3.785411784,
  clark: grain / 4.54609,
  /** 10 mg of CaCO3 a litre. */
  fH: 10,
  'mmol/L': calciumCarbonate,
})

export const hardnessUnits = scale.units

/**
 * A hardness in mg/L as CaCO3 ("ppm"). The units follow from their definitions: 1 °dH = 17.848 ppm, 1 gpg = 17.118 ppm.
 *
 * @throws {RangeError} a negative value or no number, or a unit not in {@link HardnessUnit}
 * @example hardnessFrom(15, 'gpg') // 256.77…
 */
export function hardnessFrom(value: number, unit: HardnessUnit): MgPerLitre {
  requireRange('value', value, { min: 0 })
  return scale.from(value, unit)
}

/**
 * A hardness in mg/L as CaCO3, in another unit.
 *
 * @throws {RangeError} a negative value or no number, or a unit not in {@link HardnessUnit}
 */
export function hardnessTo(ppm: MgPerLitre, unit: HardnessUnit): number {
  requireRange('hardness', ppm, { min: 0 })
  return scale.to(ppm, unit)
}

/**
 * One hardness in every unit.
 *
 * @throws {RangeError} a negative value or no number, or a unit not in {@link HardnessUnit}
 * @example hardnessInAll(100, 'ppm').dH // 5.603
 */
export function hardnessInAll(value: number, unit: HardnessUnit): Record<HardnessUnit, number> {
  const ppm = hardnessFrom(value, unit)
  return {
    ppm,
    dH: hardnessTo(ppm, 'dH'),
    gpg: hardnessTo(ppm, 'gpg'),
    clark: hardnessTo(ppm, 'clark'),
    fH: hardnessTo(ppm, 'fH'),
    'mmol/L': hardnessTo(ppm, 'mmol/L'),
  }
}

/** The two metals that make nearly all of a water's hardness, as a water analysis states them. */
export interface HardnessMetals {
  /** mg/L of calcium, not below 0. */
  calcium: MgPerLitre
  /** mg/L of magnesium, not below 0. */
  magnesium: MgPerLitre
}

/**
 * The hardness of a water from its analysis:
 *
 *     hardness = 2.497 × calcium + 4.118 × magnesium        mg/L as CaCO3
 *
 * Iron, manganese, strontium and the like are left out, as the method does for ordinary waters.
 *
 * Source: Standard Methods for the Examination of Water and Wastewater, method 2340 B.
 *
 * @throws {RangeError} a negative amount or no number
 * @example hardnessFromMetals({ calcium: 50, magnesium: 10 }) // 166.03
 */
export function hardnessFromMetals({ calcium, magnesium }: HardnessMetals): MgPerLitre {
  requireRange('calcium', calcium, { min: 0 })
  requireRange('magnesium', magnesium, { min: 0 })
  return 2.497 * calcium + 4.118 * magnesium
}
