import type { Fluid } from '../schema/things/index.ts'
import type { Setting, StockSettings } from './stock-answer.ts'

/** 55 US gallons, and the drum of other shops. */
const drums = { us: 208.2, metric: 200, imperial: 200 } as const

/** What a fluid says of its orders, else what is usual; common practice, no source. */
export function stockSettings({ stock = {}, pricePerLitre }: Fluid, units: keyof typeof drums): StockSettings {
  const of = (value: number | undefined, usual: number): Setting =>
    value === undefined ? { value: usual, assumed: true } : { value, assumed: false }
  const holdingPercent = of(stock.holdingPercent, 20)
  const holding = pricePerLitre === undefined ? 0 : (pricePerLitre * holdingPercent.value) / 100
  return {
    packSize: of(stock.packSize, drums[units]),
    leadDays: of(stock.leadDays, 7),
    leadSd: of(stock.leadSd, 3),
    service: of(stock.service, 95),
    orderCost: stock.orderCost ?? null,
    holdingCostPerYear: holding > 0 ? holding : null,
    holdingPercent,
    usedBy: stock.usedBy ?? null,
  }
}
