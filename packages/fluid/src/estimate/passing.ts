import type { ShopTime } from './events.ts'
import { type Exposure, pass } from './flow.ts'
import type { ShopEstimate, SumpState } from './shop-estimate.ts'
import { workBetween } from './work-calendar.ts'

/** Lets the time up to an instant pass in every branch. A clock that goes back changes nothing. */
export function bringTo(shop: ShopEstimate, sump: SumpState, at: ShopTime): void {
  if (!(at > sump.at)) return
  const time = exposureOf(shop, sump, sump.at, at)
  for (const { belief } of sump.branches) pass(belief, time, shop.priors.unrest)
  sump.at = at
}

/** A time at a sump in working days' worth of its losses. */
export function exposureOf(
  { calendar, priors }: ShopEstimate,
  { idles }: SumpState,
  from: ShopTime,
  until: ShopTime,
): Exposure {
  const days = until - from
  const work = Math.min(days, workBetween(calendar, from, until, idles))
  return {
    days,
    evaporation: work + priors.idle.evaporation * (days - work),
    carryOff: work + priors.idle.carryOff * (days - work),
  }
}
