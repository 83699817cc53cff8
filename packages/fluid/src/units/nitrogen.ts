import type { MgPerLitre } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** g/mol, from the abridged standard atomic weights (IUPAC 2021). */
const nitrogen = 14.007
const oxygen = 15.999

/**
 * Nitrate (NO3) from a strip or report that is marked in nitrate nitrogen (NO3-N): times 4.427.
 *
 * @throws {RangeError} a negative amount or no number
 * @example nitrateFromNitrogen(11.3) // 50.02
 */
export function nitrateFromNitrogen(value: MgPerLitre): MgPerLitre {
  requireRange('value', value, { min: 0 })
  return (value * (nitrogen + 3 * oxygen)) / nitrogen
}

/**
 * Nitrite (NO2) from a strip or report that is marked in nitrite nitrogen (NO2-N): times 3.284.
 *
 * @throws {RangeError} a negative amount or no number
 * @example nitriteFromNitrogen(6.09) // 20.00
 */
export function nitriteFromNitrogen(value: MgPerLitre): MgPerLitre {
  requireRange('value', value, { min: 0 })
  return (value * (nitrogen + 2 * oxygen)) / nitrogen
}
