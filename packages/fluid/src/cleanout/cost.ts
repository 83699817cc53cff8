import { requireRange } from '../require.ts'
import type { CleanoutSheet } from './sheet.ts'

/** Money a litre and an hour; what is missing costs nothing. */
export interface CleanoutPrices {
  concentrate?: number
  cleaner?: number
  water?: number
  /** Of what is drained, collection included. */
  waste?: number
  /** An hour of whoever stands by. */
  labour?: number
  /** An hour for which the machine stands. */
  downtime?: number
}

/**
 * What a cleanout costs by its quantities:
 *
 *     cost = Σ litres × price + labour × hours that somebody stands by + downtime × hours that the machine stands
 *
 * Chips, sludge and skimmed oil, and what one fetches the truck for, are not in it.
 *
 * @throws {RangeError} a negative price
 */
export function cleanoutCost(sheet: Extract<CleanoutSheet, { outcome: 'sheet' }>, prices: CleanoutPrices): number {
  const { concentrate = 0, cleaner = 0, water = 0, waste = 0, labour = 0, downtime = 0 } = prices
  for (const [name, price] of Object.entries({ concentrate, cleaner, water, waste, labour, downtime })) {
    requireRange(`prices.${name}`, price, { min: 0 })
  }
  const { fills } = sheet.quantities
  const litres = fills.reduce((sum, { stage, pour }) => {
    const product = stage === 'cleaner' ? cleaner : concentrate
    return sum + pour.concentrate * product + pour.water * water
  }, 0)
  return litres + sheet.quantities.waste * waste + sheet.labourHours * labour + sheet.downtimeHours * downtime
}
