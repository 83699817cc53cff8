import { refractometer } from '../shop/equipment.ts'
import { fluidOf } from '../shop/fluids.ts'
import type { Random } from '../simulate/random.ts'
import { biasOf, brixOf, percentOf } from '../simulate/refractometer.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import { firstAt, secondAt } from '../simulate/straight-lines.ts'
import { advance, isRunning, type SumpRun, standingVolume } from '../simulate/sump-run.ts'
import { concentrationOf, hardnessOf, trampOilOf } from '../simulate/sump-truth.ts'

/** What somebody reads at a sump. */
export interface Look {
  pumps: 'running' | 'stopped'
  /** As read: millimetres where the sump has a dip table, else litres. */
  level: { millimetres: number } | { litres: number }
  /** Null for a straight oil. */
  brix: number | null
}

/** What somebody makes of it, and acts on. */
export interface Belief {
  /** Litres, those out in the lines included. */
  volume: number
  /** Percent; null where it was not read. */
  concentration: number | null
}

/** Looks at a sump: the true state through the instrument, the stick and the eye. */
export function lookAt(shop: ShopRun, run: SumpRun, ms: number, random: Random): Look {
  advance(run, shop, ms)
  const running = isRunning(run, shop, ms)
  return {
    pumps: running ? 'running' : 'stopped',
    level: levelSeen(run, standingVolume(run, shop, ms), random),
    brix: brixSeen(shop, run, random),
  }
}

/** What the readings say by the book. */
export function believed(run: SumpRun, { level, brix, pumps }: Look): Belief {
  const { document } = run.plan
  const seen = 'litres' in level ? level.litres : secondAt(document.dipTable!, level.millimetres)
  return {
    volume: seen + (pumps === 'running' ? document.holdUp : 0),
    concentration: brix === null ? null : percentOf(fluidOf(document.fluid), brix),
  }
}

function levelSeen({ plan }: SumpRun, standing: number, random: Random): Look['level'] {
  const { dipTable, fillVolume, capacity } = plan.document
  const litres = Math.min(
    capacity,
    Math.max(0, standing / plan.nature.volumeScale + random.normal((fillVolume > 1000 ? 0.004 : 0.012) * fillVolume)),
  )
  if (dipTable !== undefined) return { millimetres: toStep(firstAt(dipTable, litres), 2) }
  return { litres: toStep(litres, fillVolume > 1000 ? 20 : fillVolume > 100 ? 5 : 1) }
}

function brixSeen(shop: ShopRun, { plan, truth }: SumpRun, random: Random): number | null {
  const fluid = fluidOf(plan.document.fluid)
  if (fluid.class === 'straight-oil') return null
  const clean = brixOf(fluid, concentrationOf(truth))
  const bias = biasOf({ trampOil: trampOilOf(truth), hardness: hardnessOf(truth) })
  const shown = clean + bias + shop.refractometerZero + random.normal(0.08)
  return toStep(Math.min(32, Math.max(0, shown)), refractometer.resolution)
}
