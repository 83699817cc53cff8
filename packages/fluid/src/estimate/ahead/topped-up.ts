import type { Days, Percent } from '../../quantities.ts'
import type { FiguresAhead } from '../answer-types.ts'
import type { PouredWater, ShopTime } from '../events.ts'
import { pass } from '../flow.ts'
import { exposureOf } from '../passing.ts'
import { pourUpTo } from '../pour.ts'
import { written } from '../priors.ts'
import type { ShopEstimate } from '../shop-estimate.ts'
import { pourOf } from '../written-pour.ts'
import { figuresOf } from './estimate-sump.ts'
import { later, mixAndMineralsOf, untouched } from './untouched.ts'

/** How a sump is to be kept from now on. */
export interface TopUpPlan {
  /** What is poured at each fill. */
  strength: Percent
  water: PouredWater
  /** Days from one fill to the next, at least 1. */
  every: Days
}

/**
 * Where a sump stands on days ahead if it is filled up to its mark again and again, the first time now. With the strength and the water of
 * another plan this answers what that would make of it in months.
 *
 * @param days ahead, in any order; the answer is in theirs
 */
export function toppedUp(
  shop: ShopEstimate,
  id: string,
  at: ShopTime,
  plan: TopUpPlan,
  days: readonly Days[],
): FiguresAhead[] {
  const { sump, now } = untouched(shop, id, at)
  const weighed = later(shop, sump, now)
  const pour = pourOf({ strength: plan.strength, water: plan.water })
  const every = Math.max(1, plan.every)
  const found = new Map<Days, FiguresAhead>()
  let [day, fillAt] = [0, 0]
  for (const asked of days.toSorted((a, b) => a - b)) {
    while (fillAt <= asked) {
      passAll(fillAt)
      for (const { belief } of weighed) pourUpTo(belief, written.mark, pour)
      fillAt += every
    }
    passAll(asked)
    found.set(asked, figuresOf(mixAndMineralsOf(weighed, sump.plate), asked))
  }
  return days.map((asked) => found.get(asked)!)

  function passAll(until: number): void {
    if (until <= day) return
    const time = exposureOf(shop, sump, now + day, now + until)
    for (const { belief } of weighed) pass(belief, time, shop.priors.unrest)
    day = until
  }
}
