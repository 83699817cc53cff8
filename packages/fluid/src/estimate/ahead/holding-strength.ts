import type { LitresPerDay, Percent } from '../../quantities.ts'
import { requireRange } from '../../require.ts'

/** A sump's mean losses and what it is to be held at. */
export interface HeldSump {
  target: Percent
  evaporation: LitresPerDay
  carryOff: LitresPerDay
}

/** How strong a steady top-up makes a sump: percent in it for each percent poured, (E + D) / D. */
const cycles = ({ evaporation, carryOff }: HeldSump) => (evaporation + carryOff) / carryOff

/**
 * The strength of top-ups that holds a sump at its target in the long run:
 *
 *     x* = C* D / (E + D)
 *
 * Source: balance of concentrate at constant volume, as in `balance`.
 *
 * @throws {RangeError} losses not above 0
 * @example holdingStrength({ target: 8, evaporation: 3, carryOff: 1 }) // 2
 */
export function holdingStrength(sump: HeldSump): Percent {
  requireRange('evaporation', sump.evaporation, { min: 0 })
  requireRange('carryOff', sump.carryOff, { above: 0 })
  return sump.target / cycles(sump)
}

/**
 * The one strength that serves many sumps best: the sum of the squared distances from their targets, where each ends in the long
 * run, is smallest at
 *
 *     x = Σ g C* / Σ g²,  g = (E + D) / D
 *
 * @returns the strength, and where each sump ends with it
 * @throws {RangeError} no sumps, losses not above 0
 */
export function commonStrength(sumps: readonly HeldSump[]): { strength: Percent; ends: Percent[] } {
  requireRange('sumps', sumps.length, { min: 1 })
  for (const sump of sumps) holdingStrength(sump)
  const strength =
    sumps.reduce((sum, sump) => sum + cycles(sump) * sump.target, 0) /
    sumps.reduce((sum, sump) => sum + cycles(sump) ** 2, 0)
  return { strength, ends: sumps.map((sump) => strength * cycles(sump)) }
}
