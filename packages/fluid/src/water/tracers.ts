import type { LitresPerDay, Percent } from '../quantities.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A mineral in the sump and in what it is topped up with, both in one unit. */
export interface TracerPair {
  /** Of the mix, 0 or more. */
  sump: number
  /** Of the water of the top-ups, above 0. */
  water: number
  /** Of the top-ups; default 0. */
  strength?: Percent | undefined
}

/**
 * How many times richer than its top-ups a sump has become:
 *
 *     cycles = sump / (water · (1 − strength/100))
 *
 * In a sump still on its way up it is less than the cycles of its losses, (evaporation + carryOff) / carryOff. Chloride tells best; hardness comes
 * out lower where soaps have dropped it as scum, and the difference is what they took.
 *
 * Source: mass balance.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example cyclesFromTracer({ sump: 160, water: 40 }) // 4
 */
export function cyclesFromTracer({ sump, water, strength = 0 }: TracerPair): number {
  requireRange('sump', sump, { min: 0 })
  requireRange('water', water, { above: 0 })
  requireRange('strength', strength, { min: 0 })
  if (!(strength < 100)) throw new OutOfRange('strength', strength, 'below 100')
  return sump / (water * (1 - strength / 100))
}

/**
 * What a sump at balance loses as fluid, from what evaporates and how rich it has become:
 *
 *     carryOff = evaporation / (cycles − 1)
 *
 * @throws {RangeError} evaporation below 0, cycles of 1 or fewer
 * @example carryOffFromCycles({ evaporation: 6, cycles: 4 }) // 2
 */
export function carryOffFromCycles({
  evaporation,
  cycles,
}: {
  evaporation: LitresPerDay
  cycles: number
}): LitresPerDay {
  requireRange('evaporation', evaporation, { min: 0 })
  requireRange('cycles', cycles, { above: 1 })
  return evaporation / (cycles - 1)
}
