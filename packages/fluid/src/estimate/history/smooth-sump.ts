import { newTape, smooth, stopHere } from '../../filter/index.ts'
import type { Figure } from '../../quantities.ts'
import { figureOf, innerOf } from '../ahead/mixture.ts'
import { partsOf, volumeParts, type Weighed } from '../ahead/untouched.ts'
import type { ShopTime, WorkCalendar } from '../events.ts'
import { openShopEstimate } from '../pack.ts'
import { bringTo } from '../passing.ts'
import type { ShopPriors } from '../priors.ts'
import { bestBranch, type SumpState } from '../shop-estimate.ts'
import { hardness, size, strength } from '../state.ts'
import { followSump, type ToldSump } from './follow-sump.ts'

/** Where a sump stood at the beginning of a day, by all that is known today. */
export interface PastDay {
  at: ShopTime
  concentration: Figure & { low50: number; high50: number }
  volume: Figure & { low50: number; high50: number }
  hardness: Figure & { low50: number; high50: number }
}

/**
 * The history of a sump with hindsight: every day by the readings before and after it. Readings after a gap tell what happened in it,
 * and a change of the losses shows where it began, not where it was noticed.
 *
 * @param told the sump's events up to `at` and the doubts that the shop's estimate came to
 * @param from the first day wanted, whole; days before the sump's first event are left out
 */
export function smoothSump(
  { calendar, priors }: { calendar: WorkCalendar; priors: ShopPriors },
  told: ToldSump,
  { from, at }: { from: ShopTime; at: ShopTime },
): PastDay[] {
  const shop = openShopEstimate(calendar, priors)
  let next = from
  const stopUntil = (sump: SumpState, until: ShopTime) => {
    const { belief } = bestBranch(sump)
    belief.tape ??= newTape()
    next = Math.max(next, Math.ceil(sump.at))
    for (; next <= until; next++) {
      bringTo(shop, sump, next)
      stopHere(belief, next)
    }
  }
  const sump = followSump(shop, told, (reached, event) => stopUntil(reached, Math.min(event.at, at)))
  if (sump === null) return []
  stopUntil(sump, at)
  const { plate } = sump
  return smooth(bestBranch(sump).belief).map(({ label, mean, cov }) => {
    const then: Weighed[] = [{ belief: { size, mean, cov, tape: null }, probability: 1 }]
    const figure = (parts: ReturnType<typeof partsOf>, most?: number) => {
      const { low, high } = innerOf(parts, 0)
      return { ...figureOf(parts, 0, most), low50: low, high50: high }
    }
    return {
      at: label,
      concentration: figure(partsOf(then, strength), 100),
      volume: figure(volumeParts(then, plate)),
      hardness: figure(partsOf(then, hardness)),
    }
  })
}
