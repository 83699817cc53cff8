import { type Premix, type PremixNeed, premix } from '@sumpbook/fluid'
import type { SumpItem, Today } from '../api/types.ts'

/** A sump that can be served from the cart. */
export interface CartNeed extends PremixNeed {
  name: string
  fluid: { id: string; name: string }
  /** Where its own recipe would leave it. */
  aim: number
  band: { low: number; high: number } | null
  /** Whether today's list asks for it; the others are only filled up. */
  isListed: boolean
}

/** The sumps of a day: those of the list, and all others. */
export type SumpsOfDay = Pick<Today, 'items' | 'round' | 'later' | 'putOff' | 'calm'>

/** Every sump that is not on the list: what waits, was put off or is to be read, then what is in order. */
export const besideTheList = ({ round, later, putOff, calm }: SumpsOfDay): SumpItem[] => [
  ...(later?.items ?? []),
  ...putOff.items,
  ...(round?.items ?? []),
  ...calm,
]

/** What today's recipes would pour, list first. A change of the charge is no matter for the cart. */
export function cartNeeds(day: SumpsOfDay): CartNeed[] {
  const need =
    (isListed: boolean) =>
    (item: SumpItem): CartNeed[] => {
      const { recipe, action, sump, name, fluid, bench } = item
      if (recipe.add === null || recipe.result === null || action === 'change') return []
      const { volume, strength } = recipe.add
      if (!(volume > 0)) return []
      const { id, name: fluidName } = fluid
      return [
        {
          sump,
          name,
          fluid: { id, name: fluidName },
          volume,
          strength,
          sumpVolume: recipe.result.volume,
          aim: recipe.result.concentration,
          band: bench.band,
          isListed,
        },
      ]
    }
  return [...day.items.flatMap(need(true)), ...besideTheList(day).flatMap(need(false))]
}

/** Where a sump lands when it is poured from the cart. */
export interface Served {
  need: CartNeed
  /** Poured instead of the strength it asks for. */
  strength: number
  error: number
  lands: number
  isInBand: boolean
}

export interface CartPlan {
  batches: Premix['batches']
  served: Served[]
  worst: number
}

/** Concentrates are never mixed: each fluid has batches of its own. */
export function planCart(needs: readonly CartNeed[], strengths: number): CartPlan | null {
  if (needs.length === 0) return null
  const { batches, errors, worst } = premix(needs, strengths)
  const served = needs.map((need, i): Served => {
    const { error } = errors[i]!
    const lands = need.aim + error
    const { low = 0, high = 100 } = need.band ?? {}
    const batch = batches.find(({ sumps }) => sumps.includes(need.sump))!
    return { need, strength: batch.strength, error, lands, isInBand: lands >= low - 1e-9 && lands <= high + 1e-9 }
  })
  return { batches, served, worst }
}

/** The worst error for one strength, for two, and so on. */
export function worstByStrengths(needs: readonly CartNeed[], most = 5): number[] {
  return Array.from({ length: most }, (_, i) => planCart(needs, i + 1)?.worst ?? 0)
}

/** The fluids that needs are of, in their order. */
export function fluidsOf(needs: readonly CartNeed[]): { id: string; name: string }[] {
  return [...new Map(needs.map(({ fluid }) => [fluid.id, fluid])).values()]
}
