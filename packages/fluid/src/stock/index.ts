export { type Demand, demandOf, type Use, weeklyUse } from './demand.ts'
export { type DemandPattern, demandPattern, gapsFrom, unlikeFrom } from './demand-pattern.ts'
export {
  cheapestPacks,
  type DiscountedOrder,
  discountedOrder,
  economicOrder,
  type OrderCosts,
  type PriceFrom,
  yearlyOrderCost,
} from './economic-order.ts'
export { type IntermittentDemand, intermittentDemand } from './intermittent.ts'
export { type Keeping, type Stock, type StockCount, type StockEvent, type StockLot, stockOf } from './lots.ts'
export { type OrderSize, type OrderSizeQuestion, orderSize } from './order-size.ts'
export { type ReorderAnswer, type Replenishment, reorder } from './reorder.ts'
export {
  daysAhead,
  type OnOrder,
  type PlannedUse,
  type StockAhead,
  type StockAheadQuestion,
  stockAhead,
} from './stock-ahead.ts'
