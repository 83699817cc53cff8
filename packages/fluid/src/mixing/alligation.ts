import type { Litres, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** Two strengths to be mixed, in any order, and the strength wanted. */
export interface TwoStrengths {
  first: Percent
  second: Percent
  wanted: Percent
}

/** Parts of each that make the wanted strength together, or the strengths between which any mix of the two lies. */
export type Parts =
  | { outcome: 'parts'; first: number; second: number }
  | { outcome: 'unreachable'; low: Percent; high: Percent }

/**
 * How two strengths make a third, as shares of the mix:
 *
 *     first : second = |second − wanted| : |wanted − first|,        first + second = 1
 *
 * Two equal strengths make only that one, in any parts; half and half is given.
 *
 * Source: alligation, as in pharmacy arithmetic; conservation of concentrate, volumes taken as additive.
 *
 * @throws {RangeError} a strength outside 0 to 100
 * @example alligation({ first: 70, second: 20, wanted: 30 }) // first 0.2, second 0.8: parts 1 : 4
 */
export function alligation({ first, second, wanted }: TwoStrengths): Parts {
  requireRange('first', first, { min: 0, max: 100 })
  requireRange('second', second, { min: 0, max: 100 })
  requireRange('wanted', wanted, { min: 0, max: 100 })
  const [low, high] = [Math.min(first, second), Math.max(first, second)]
  if (wanted < low || wanted > high) return { outcome: 'unreachable', low, high }
  if (first === second) return { outcome: 'parts', first: 0.5, second: 0.5 }
  const share = (wanted - second) / (first - second)
  return { outcome: 'parts', first: share, second: 1 - share }
}

/** Fluid that is there, and what can be added to it. */
export interface Blend {
  /** Litres that are there, 0 or more. */
  volume: Litres
  /** Of what is there. */
  concentration: Percent
  /** Of what is added: 100 for neat concentrate, 0 for water. */
  strength: Percent
  target: Percent
}

/** How much to add, or how far adding can ever bring it. */
export type Amount =
  | { outcome: 'amount'; add: Litres; total: Litres }
  | { outcome: 'unreachable'; low: Percent; high: Percent }

/**
 * How much of one strength must go into a volume of another to reach a target:
 *
 *     add = volume · (target − concentration) / (strength − target)
 *
 * It says nothing about whether the vessel holds it.
 *
 * Source: conservation of concentrate, volumes taken as additive.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example amountToReach({ volume: 400, concentration: 4, strength: 100, target: 6 }) // add 8.5106…
 */
export function amountToReach({ volume, concentration, strength, target }: Blend): Amount {
  requireRange('volume', volume, { min: 0 })
  requireRange('concentration', concentration, { min: 0, max: 100 })
  requireRange('strength', strength, { min: 0, max: 100 })
  requireRange('target', target, { min: 0, max: 100 })
  const [low, high] = [Math.min(concentration, strength), Math.max(concentration, strength)]
  if (target === concentration) return { outcome: 'amount', add: 0, total: volume }
  if (target < low || target > high || target === strength) return { outcome: 'unreachable', low, high }
  const add = (volume * (target - concentration)) / (strength - target)
  return { outcome: 'amount', add, total: volume + add }
}

/** Fluid that is there, what it shall become, and how much. */
export interface FillUp {
  /** Litres that are there, 0 or more. */
  volume: Litres
  concentration: Percent
  /** Litres wanted in all, more than there are. */
  total: Litres
  target: Percent
}

/** The strength to fill up with, or the strengths that filling up with anything from water to neat concentrate can reach. */
export type FillUpStrength =
  | { outcome: 'strength'; add: Litres; strength: Percent }
  | { outcome: 'unreachable'; low: Percent; high: Percent }

/**
 * The strength with which to fill up a volume to a larger one so that it stands at the target:
 *
 *     strength = (total · target − volume · concentration) / (total − volume)
 *
 * Source: conservation of concentrate, volumes taken as additive.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example fillUpStrength({ volume: 150, concentration: 6.5, total: 200, target: 6 }) // 50 L at 4.5 %
 */
export function fillUpStrength({ volume, concentration, total, target }: FillUp): FillUpStrength {
  requireRange('volume', volume, { min: 0 })
  requireRange('concentration', concentration, { min: 0, max: 100 })
  requireRange('total', total, { above: volume })
  requireRange('target', target, { min: 0, max: 100 })
  const add = total - volume
  const strength = (total * target - volume * concentration) / add
  const low = (volume * concentration) / total
  if (strength < 0 || strength > 100) return { outcome: 'unreachable', low, high: low + (100 * add) / total }
  return { outcome: 'strength', add, strength }
}
