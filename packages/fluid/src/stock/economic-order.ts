import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** What ordering and keeping cost. */
export interface OrderCosts {
  /** Litres used in a year, 0 or more. */
  yearly: Litres
  /** Money for an order, whatever its size, 0 or more. */
  orderCost: number
  /** Money for a litre kept a year, above 0. */
  holdingCostPerYear: number
}

/**
 * The order size at which ordering and keeping together cost least, for steady use:
 *
 *     quantity = √(2 · yearly · orderCost / holdingCostPerYear)
 *
 * Flat around its best: half as much or twice as much costs a quarter more, so round it to whole drums without grief.
 *
 * Source: F. W. Harris, How many parts to make at once (1913); L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 3.2.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example economicOrder({ yearly: 1000, orderCost: 10, holdingCostPerYear: 0.5 }) // 200
 */
export function economicOrder(costs: OrderCosts): Litres {
  requireCosts(costs)
  const { yearly, orderCost, holdingCostPerYear } = costs
  return Math.sqrt((2 * yearly * orderCost) / holdingCostPerYear)
}

/**
 * What a year of orders of one size costs, without the fluid itself:
 *
 *     cost = orderCost · yearly / quantity + holdingCostPerYear · quantity / 2
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example yearlyOrderCost(200, { yearly: 1000, orderCost: 10, holdingCostPerYear: 0.5 }) // 100
 */
export function yearlyOrderCost(quantity: Litres, costs: OrderCosts): number {
  requireRange('quantity', quantity, { above: 0 })
  requireCosts(costs)
  const { yearly, orderCost, holdingCostPerYear } = costs
  return (orderCost * yearly) / quantity + (holdingCostPerYear * quantity) / 2
}

/**
 * The count of whole packs that costs least in a year, at least one. The cost is convex in the quantity, so the best count is one
 * of the two beside the best quantity.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example cheapestPacks(200, { yearly: 1300, orderCost: 8, holdingCostPerYear: 0.225 }) // 2
 */
export function cheapestPacks(packSize: Litres, costs: OrderCosts): number {
  requireRange('packSize', packSize, { above: 0 })
  const fewer = Math.max(1, Math.floor(economicOrder(costs) / packSize))
  const costOf = (packs: number) => yearlyOrderCost(packs * packSize, costs)
  return costOf(fewer + 1) < costOf(fewer) ? fewer + 1 : fewer
}

/** The price of a litre where at least so many are ordered at once. */
export interface PriceFrom {
  /** Litres, 0 or more. */
  from: Litres
  /** Money a litre, above 0. */
  price: number
}

export interface DiscountedOrder {
  quantity: Litres
  /** Money a year: fluid, orders and keeping. */
  costPerYear: number
  price: number
}

/**
 * The order size that costs least in a year where larger orders are cheaper by the litre, the fluid's own price included. In each
 * step of the price the best quantity is that of {@link economicOrder}, or the smallest that has the price.
 *
 *     holdingCostPerYear = holdingShare · price
 *
 * Source: all-units discount; Snyder and Shen, 3.4.
 *
 * @param prices at least one from 0, in any order
 * @throws {RangeError} no price from 0, a quantity outside the range its field gives
 * @example discountedOrder({ yearly: 1300, orderCost: 8, holdingShare: 0.3, prices: [{ from: 0, price: 0.75 }, { from: 800, price: 0.68 }] })
 */
export function discountedOrder({
  yearly,
  orderCost,
  holdingShare,
  prices,
}: {
  yearly: Litres
  orderCost: number
  /** Share of the price that a litre kept a year costs, above 0. */
  holdingShare: number
  prices: readonly PriceFrom[]
}): DiscountedOrder {
  requireRange('holdingShare', holdingShare, { above: 0 })
  const steps = prices.toSorted((a, b) => a.from - b.from)
  requireRange('prices[0].from', steps[0]?.from ?? Number.NaN, { min: 0, max: 0 })
  const found = steps.map(({ from, price }, n): DiscountedOrder => {
    requireRange('price', price, { above: 0 })
    const costs = { yearly, orderCost, holdingCostPerYear: holdingShare * price }
    const best = economicOrder(costs)
    const quantity = Math.max(best, from)
    const isDearer = quantity >= (steps[n + 1]?.from ?? Number.POSITIVE_INFINITY) || quantity === 0
    const costPerYear = isDearer ? Number.POSITIVE_INFINITY : price * yearly + yearlyOrderCost(quantity, costs)
    return { quantity, costPerYear, price }
  })
  return found.reduce((best, one) => (one.costPerYear < best.costPerYear ? one : best))
}

function requireCosts({ yearly, orderCost, holdingCostPerYear }: OrderCosts): void {
  requireRange('yearly', yearly, { min: 0 })
  requireRange('orderCost', orderCost, { min: 0 })
  requireRange('holdingCostPerYear', holdingCostPerYear, { above: 0 })
}
