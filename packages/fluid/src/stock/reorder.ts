import type { Days, Litres, LitresPerDay, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { normalQuantile } from '../statistics/normal.ts'
import { cheapestPacks, economicOrder } from './economic-order.ts'

const daysAYear = 365

/** How a fluid is used, delivered and paid for. */
export interface Replenishment {
  /** Used on the mean, 0 or more. */
  dailyMean: LitresPerDay
  /** From one day to the next, 0 or more. */
  dailySd: Sd
  /** How well `dailyMean` itself is known, 0 or more; 0 without it. */
  dailyMeanSd?: Sd
  /** From order to delivery, 0 or more. */
  leadDays: Days
  leadSd: Sd
  /** The chance of not running out while a delivery is awaited, from 0.5 to below 1. */
  service: number
  /** Money for an order; null where nobody knows. */
  orderCost: number | null
  /** Money for a litre kept a year, above 0; null where nobody knows. */
  holdingCostPerYear: number | null
  /** Litres of a drum, above 0; null where it comes by the litre. */
  packSize: Litres | null
}

export interface ReorderAnswer {
  /** Used on the mean while a delivery is awaited, and how far that may be off. */
  leadDemand: Litres
  leadDemandSd: Sd
  /** What is kept against bad luck. */
  safetyStock: Litres
  /** Order once stock and what is on its way are down to this. */
  reorderPoint: Litres
  /** The cheapest size of an order; null where a cost is not known. */
  economicQuantity: Litres | null
  /** The same in whole packs; 0 where nothing is used. */
  orderQuantity: Litres | null
  packs: number | null
}

/**
 * When to order and how much:
 *
 *     leadDemand   = dailyMean · leadDays
 *     leadDemandSd = √(leadDays · dailySd² + dailyMean² · leadSd² + leadDays² · dailyMeanSd²)
 *     safetyStock  = z(service) · leadDemandSd
 *     reorderPoint = leadDemand + safetyStock
 *     quantity     = √(2 · 365 dailyMean · orderCost / holdingCostPerYear), then the cheapest count of whole packs
 *
 * `service` is the chance that one wait for a delivery ends without an empty shelf; it is not the share of litres had in time. Days are
 * taken as independent and their sum as normal: for a fluid of which a drum goes every other month the safety stock is rough,
 * and one drum more is the better rule.
 *
 * Source: any text on stock keeping, such as L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 5.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example reorder({ dailyMean: 15, dailySd: 3, leadDays: 4, leadSd: 0, service: 0.97, orderCost: null, holdingCostPerYear: null, packSize: null }) // reorderPoint 71.28
 */
export function reorder(question: Replenishment): ReorderAnswer {
  const {
    dailyMean,
    dailySd,
    dailyMeanSd = 0,
    leadDays,
    leadSd,
    service,
    orderCost,
    holdingCostPerYear,
    packSize,
  } = question
  for (const [name, value] of Object.entries({ dailyMean, dailySd, dailyMeanSd, leadDays, leadSd })) {
    requireRange(name, value, { min: 0 })
  }
  requireRange('service', service, { min: 0.5, max: 0.999999 })
  if (packSize !== null) requireRange('packSize', packSize, { above: 0 })
  const leadDemand = dailyMean * leadDays
  const leadDemandSd = Math.hypot(Math.sqrt(leadDays) * dailySd, dailyMean * leadSd, leadDays * dailyMeanSd)
  const safetyStock = normalQuantile(service) * leadDemandSd
  return {
    leadDemand,
    leadDemandSd,
    safetyStock,
    reorderPoint: leadDemand + safetyStock,
    ...quantityOf({ yearly: daysAYear * dailyMean, orderCost, holdingCostPerYear, packSize }),
  }
}

function quantityOf({
  yearly,
  orderCost,
  holdingCostPerYear,
  packSize,
}: Pick<Replenishment, 'orderCost' | 'holdingCostPerYear' | 'packSize'> & { yearly: Litres }): Pick<
  ReorderAnswer,
  'economicQuantity' | 'orderQuantity' | 'packs'
> {
  if (orderCost === null || holdingCostPerYear === null)
    return { economicQuantity: null, orderQuantity: null, packs: null }
  const costs = { yearly, orderCost, holdingCostPerYear }
  const economicQuantity = economicOrder(costs)
  if (packSize === null) return { economicQuantity, orderQuantity: economicQuantity, packs: null }
  const packs = yearly === 0 ? 0 : cheapestPacks(packSize, costs)
  return { economicQuantity, orderQuantity: packs * packSize, packs }
}
