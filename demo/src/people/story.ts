import type { ShopRun } from '../simulate/shop-run.ts'
import { openFrom } from '../simulate/shop-run.ts'
import type { SumpRun } from '../simulate/sump-run.ts'

/** Days before the last on which something happened once. */
export const turningPoints = {
  rancid: 138,
  cleanout: 130,
  latheCleanout: 200,
  grinderCleanout: 11,
  deionisedAtMill7: 148,
  markMoved: 110,
  priceRaised: 60,
  heavyJobAtTc2: 18,
  leak: 3,
} as const

/** The mark of the sliding-head lathe before a new strainer moved it, litres. */
export const oldMark = 110

/** The full mark that was true on a day. */
export function markOn({ last }: ShopRun, { plan }: SumpRun, day: number): number {
  const { id, fillVolume } = plan.document
  return id === 'slide3' && last - day > turningPoints.markMoved ? oldMark : fillVolume
}

/** The day of a sump's fresh charge, or of the first look at it: the book did not begin everywhere at once. */
export function beginsOn(shop: ShopRun, sump: string): number {
  const place = shop.sumps.findIndex(({ plan }) => plan.document.id === sump)
  return openFrom(shop, Math.floor(place * 0.9))
}
