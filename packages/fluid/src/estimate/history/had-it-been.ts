import type { PouredWater, ShopEvent, ShopTime, WorkCalendar } from '../events.ts'
import { openShopEstimate } from '../pack.ts'
import { bringTo } from '../passing.ts'
import type { ShopPriors } from '../priors.ts'
import { bestBranch } from '../shop-estimate.ts'
import { chloride, hardness } from '../state.ts'
import { followSump, type ToldSump } from './follow-sump.ts'

/** Minerals of a sump as they would stand with other water, against how they do by the same reckoning. mg/L. */
export interface OtherWater {
  hardness: { asPoured: number; asked: number }
  chloride: { asPoured: number; asked: number }
}

/**
 * What another water would have made of a sump: the same pours at the same times since a day, with other minerals in them. Readings of
 * minerals are left out of both courses, so that they differ in the water alone; the losses are those that the readings of strength and
 * level taught.
 *
 *     change = N(asked) − N(as poured)
 *
 * @param since pours from then on are with the other water
 */
export function hadItBeen(
  { calendar, priors }: { calendar: WorkCalendar; priors: ShopPriors },
  told: ToldSump,
  { water, since, at }: { water: PouredWater; since: ShopTime; at: ShopTime },
): OtherWater | null {
  const end = (events: readonly ShopEvent[]) => {
    const shop = openShopEstimate(calendar, priors)
    const sump = followSump(shop, { ...told, events }, () => {})
    if (sump === null) return null
    bringTo(shop, sump, at)
    const { mean } = bestBranch(sump).belief
    return { hardness: mean[hardness]!, chloride: mean[chloride]! }
  }
  const silent = told.events.map((event) =>
    event.kind === 'reading' ? { ...event, hardness: null, chloride: null, conductivity: null } : event,
  )
  const other = silent.map((event) =>
    (event.kind === 'addition' || event.kind === 'charge') && event.at >= since ? { ...event, water } : event,
  )
  const [asPoured, asked] = [end(silent), end(other)]
  if (asPoured === null || asked === null) return null
  return {
    hardness: { asPoured: asPoured.hardness, asked: asked.hardness },
    chloride: { asPoured: asPoured.chloride, asked: asked.chloride },
  }
}
