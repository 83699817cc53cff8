import type { Litres, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import type { Pour } from './recipe.ts'

/** A bucket, a jug: what liquid is carried in. */
export interface Container {
  id?: string
  name: string
  capacity: Litres
  /** Litres between two marks on its wall; without it half litres are judged by eye. */
  graduation?: Litres
}

/** A pour as it can really be measured out. */
export interface Dispensed {
  container: Container
  /** Whole buckets of water. */
  fullWater: number
  /** The rest of the water, to the nearest mark. */
  restWater: Litres
  /** The concentrate, to the nearest mark. */
  concentrate: Litres
  /** Buckets carried: those of water, and those of concentrate. */
  buckets: number
  /** What the rounded amounts make. */
  volume: Litres
  strength: Percent
}

/**
 * The same pour, in whole buckets of water, a rest to the nearest mark, and the concentrate last to its nearest
 * mark: what comes of rounding is given as the strength and volume really poured.
 *
 * @param measure what the concentrate is measured in; the bucket itself where there is no finer jug
 * @throws {RangeError} a container without a capacity above 0, or with a graduation wider than itself
 */
export function dispense(pour: Pour, container: Container, measure: Container = container): Dispensed {
  const { capacity } = container
  const graduation = marksOf(container)
  const water = toMark(pour.water, graduation)
  const concentrate = toMark(pour.concentrate, marksOf(measure))
  const fullWater = Math.floor(water / capacity + 1e-9)
  const restWater = Math.max(0, water - fullWater * capacity)
  const volume = water + concentrate
  return {
    container,
    fullWater,
    restWater: restWater < graduation / 2 ? 0 : restWater,
    concentrate,
    buckets: bucketsOf(water, capacity) + bucketsOf(concentrate, capacity),
    volume,
    strength: volume === 0 ? 0 : (100 * concentrate) / volume,
  }
}

/** Buckets that an amount takes; a whole bucket's worth of rounding is no bucket more. */
const bucketsOf = (litres: Litres, capacity: Litres) => Math.max(0, Math.ceil(litres / capacity - 1e-9))

/** Litres between the marks that can be poured to. */
function marksOf({ capacity, graduation = Math.min(0.5, capacity) }: Container): Litres {
  requireRange('capacity', capacity, { above: 0 })
  requireRange('graduation', graduation, { above: 0, max: capacity })
  return graduation
}

/** To the nearest mark, downwards at a tie: an overfull sump is worse than one a mark low. */
const toMark = (litres: Litres, graduation: Litres) =>
  Math.max(0, Math.ceil(litres / graduation - 0.5 - 1e-9)) * graduation
