import type { Days, Litres, LitresPerDay } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** What decides how many drums an order has. */
export interface OrderSizeQuestion {
  /** Above 0. */
  packSize: Litres
  dailyMean: LitresPerDay
  /** The cheapest order in litres; null where a cost is not known. */
  economicQuantity: Litres | null
  reorderPoint: Litres
  /** What will be there and on its way when the order is placed. */
  position: Litres
  /** Of a drum on the day it comes; null where it keeps. */
  shelfDays: Days | null
}

/** Weeks that an order covers where nobody knows what ordering costs. */
const weeksCovered = 4

export interface OrderSize {
  packs: number
  litres: Litres
  /** What set the count: costs, four weeks' use, a shelf that is far below its reorder point, or what grows too old before it is used. */
  because: 'cost' | 'four-weeks' | 'far-below' | 'shelf-life'
}

/**
 * How many drums to order: the cheapest count, without costs about four weeks' use; at least as many as bring stock above its reorder point; at
 * most what is used before it is too old, though never none.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example orderSize({ packSize: 200, dailyMean: 7, economicQuantity: 420, reorderPoint: 80, position: 70, shelfDays: 300 }) // 2 drums
 */
export function orderSize(question: OrderSizeQuestion): OrderSize {
  const { packSize, dailyMean, economicQuantity, reorderPoint, position, shelfDays } = question
  requireRange('packSize', packSize, { above: 0 })
  requireRange('dailyMean', dailyMean, { min: 0 })
  requireRange('reorderPoint', reorderPoint, { min: 0 })
  const wished = economicQuantity ?? 7 * weeksCovered * dailyMean
  const cheapest = Math.max(1, Math.round(wished / packSize))
  const least = Math.ceil((reorderPoint - position) / packSize + 1e-9)
  const most =
    shelfDays === null
      ? Number.POSITIVE_INFINITY
      : Math.max(1, Math.floor((dailyMean * shelfDays - Math.max(0, position)) / packSize))
  const of = (packs: number, because: OrderSize['because']): OrderSize => ({ packs, litres: packs * packSize, because })
  if (Math.max(cheapest, least) > most) return of(most, 'shelf-life')
  if (least > cheapest) return of(least, 'far-below')
  return of(cheapest, economicQuantity === null ? 'four-weeks' : 'cost')
}
