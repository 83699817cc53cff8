import { fitLine } from '../calibration/line.ts'
import type { Days } from '../quantities.ts'
import { studentQuantile } from '../statistics/index.ts'

/** What a charge cost to keep over some days of its life. */
export interface KeptFor {
  /** Age of the charge in the middle of that time. */
  age: Days
  /** Money a day. */
  costPerDay: number
}

/** Whether keeping a charge becomes dearer with its age. */
export type CostGrowth =
  | { outcome: 'too-few'; periods: number }
  | { outcome: 'flat' | 'grows'; start: number; growth: number; low90: number; high90: number; periods: number }

/** Fewer periods than this say nothing of a trend (common practice, no source). */
const fewest = 4

/**
 * The straight line through what keeping a charge cost at several ages: costPerDay = start + growth × age, with the 90 % interval of `growth`. It grows
 * where that interval lies above 0. Costs that come in lumps (a drum of additive, a repair) make the interval wide, as it should be.
 *
 * @throws {RangeError} figures that are no numbers, periods of one age
 * @example costGrowth([{ age: 14, costPerDay: 2.3 }, { age: 42, costPerDay: 2.9 }, { age: 70, costPerDay: 3.4 }, { age: 98, costPerDay: 4 }]) // grows by 0.02 a day
 */
export function costGrowth(kept: readonly KeptFor[]): CostGrowth {
  if (kept.length < fewest) return { outcome: 'too-few', periods: kept.length }
  const line = fitLine(
    kept.map(({ age, costPerDay }) => ({ x: age, y: costPerDay })),
    { name: 'kept' },
  )
  const reach = studentQuantile({ probability: 0.95, degreesOfFreedom: line.degreesOfFreedom }) * (line.slopeSd ?? 0)
  return {
    outcome: line.slope - reach > 0 ? 'grows' : 'flat',
    start: Math.max(0, line.intercept),
    growth: line.slope,
    low90: line.slope - reach,
    high90: line.slope + reach,
    periods: kept.length,
  }
}
