import { fluidOf } from '../shop/fluids.ts'
import type { Random } from '../simulate/random.ts'
import { toStep } from '../simulate/steps.ts'
import type { SumpRun } from '../simulate/sump-run.ts'
import type { Belief } from './look.ts'
import { dialNearest, type Pour, pourable } from './pour.ts'

/** How somebody goes about pouring. */
export type Manner =
  | 'usual' // below the usual share of the mark, often with the usual dial
  | 'careful' // at every gap, at the strength that meets the target
  | 'water' // with plain water: the mixer is taken
  | 'nothing'

/** What to pour after a look; null for nothing. */
export function decide(run: SumpRun, mark: number, belief: Belief, manner: Manner, random: Random): Pour | null {
  const missing = mark - belief.volume
  const share = missing / mark
  if (manner === 'nothing' || missing <= 0) return null
  if (manner === 'usual' && !isDue(run, share, belief)) return null
  if (manner !== 'usual' && share < 0.004) return null
  return { volume: pourable(run, missing), strength: strengthOf(run, mark, belief, manner, random) }
}

function isDue({ plan }: SumpRun, share: number, { concentration }: Belief): boolean {
  const low = fluidOf(plan.document.fluid).limits?.concentration?.low ?? 0
  const isLean = concentration !== null && concentration < low
  return share > 1 - plan.habits.topUpBelow || (isLean && share > 0.03)
}

function strengthOf(run: SumpRun, mark: number, { volume, concentration }: Belief, manner: Manner, random: Random) {
  const fluid = fluidOf(run.plan.document.fluid)
  if (fluid.class === 'straight-oil') return 100
  const least = fluid.minTopUp ?? 0
  const most = fluid.maxMixStrength ?? 20
  if (manner === 'water') return 0
  const usual = 0.4 * run.target
  const wanted =
    concentration === null ? usual : (run.target * mark - concentration * volume) / Math.max(1e-9, mark - volume)
  const within = Math.min(most, Math.max(least, wanted))
  if (run.plan.habits.pouredBy === 'jug') return toStep(within, 0.5)
  return dialNearest(manner === 'usual' && random.chance(0.3) ? usual : within, { least, most })
}
