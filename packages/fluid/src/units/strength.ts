import type { Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/**
 * The strength of a mix made as "1 : N": 1 part concentrate and N parts **water**, 1 + N parts together.
 *
 *     percent = 100 / (1 + N)
 *
 * 1 : 20 is therefore 4.76 %, not 5 %. For "1 in N" (1 part concentrate in N parts of finished mix) see {@link percentFromOneIn}.
 *
 * @throws {RangeError} parts below 0 or no number
 * @example percentFromWaterParts(20) // 4.7619…
 */
export function percentFromWaterParts(waterParts: number): Percent {
  requireRange('waterParts', waterParts, { min: 0 })
  return 100 / (1 + waterParts)
}

/**
 * The N of "1 part concentrate to N parts water".
 *
 *     N = 100 / percent − 1
 *
 * @throws {RangeError} a strength not above 0 or above 100: plain water has no such ratio
 * @example waterPartsFromPercent(5) // 19
 */
export function waterPartsFromPercent(percent: Percent): number {
  requireRange('percent', percent, { above: 0, max: 100 })
  return (100 - percent) / percent
}

/**
 * The strength of a mix stated as "1 in N": 1 part concentrate in N parts of **finished mix**.
 *
 *     percent = 100 / N
 *
 * @throws {RangeError} parts below 1 or no number
 * @example percentFromOneIn(20) // 5
 */
export function percentFromOneIn(parts: number): Percent {
  requireRange('parts', parts, { min: 1 })
  return 100 / parts
}

/** A mix weighed out rather than measured out. */
export interface WeighedMix {
  /** Mass of concentrate in 100 of mix, 0 to 100. */
  massPercent: number
  /** kg/L, from the fluid's sheet; mineral-oil concentrates lie near 0.9, synthetic ones above 1. */
  concentrateDensity: number
  /** kg/L; without it 0.9982, water at 20 °C. */
  waterDensity?: number | undefined
}

/**
 * The strength by volume of a mix made by mass, as in laboratory preparations after ASTM D4627:
 *
 *     percent = 100 (m / ρc) / (m / ρc + (100 − m) / ρw)
 *
 * Volumes are taken as additive.
 *
 * Source: plain mass balance.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example volumePercentFromMass({ massPercent: 5, concentrateDensity: 0.9 }) // 5.5155
 */
export function volumePercentFromMass({ massPercent, concentrateDensity, waterDensity = 0.9982 }: WeighedMix): Percent {
  requireRange('massPercent', massPercent, { min: 0, max: 100 })
  requireRange('concentrateDensity', concentrateDensity, { above: 0 })
  requireRange('waterDensity', waterDensity, { above: 0 })
  const concentrate = massPercent / concentrateDensity
  const water = (100 - massPercent) / waterDensity
  return (100 * concentrate) / (concentrate + water)
}
