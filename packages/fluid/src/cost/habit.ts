import type { Days, Litres, LitresPerDay, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** How strong a sump ran, day by day, and what it lost with chips and parts. */
export interface RichDays {
  /** Null where it is not known. */
  strengths: readonly (Percent | null)[]
  target: Percent
  carryOff: LitresPerDay
}

/**
 * Concentrate that was carried off only because the sump stood above its target:
 *
 *     litres = Σ over days of max(0, strength − target) / 100 × carryOff
 *
 * Days whose strength is not known count nothing, so that it is the least that can be said. Proportional to `carryOff`; an error of the readings
 * that all days share moves it by days × carryOff / 100 for each percent.
 *
 * @throws {RangeError} a quantity outside the range its type gives
 * @example concentrateAboveTarget({ strengths: [9, 8, 6, null], target: 7, carryOff: 10 }) // 0.3 L
 */
export function concentrateAboveTarget({ strengths, target, carryOff }: RichDays): Litres {
  requireRange('target', target, { min: 0, max: 100 })
  requireRange('carryOff', carryOff, { min: 0 })
  const above = strengths.reduce<number>((sum, strength) => sum + Math.max(0, (strength ?? target) - target), 0)
  return (above / 100) * carryOff
}

/** A sump between two times: where it began, how full it ended, and what left it at its own strength meanwhile. */
export interface HoldingNeed {
  start: { volume: Litres; concentration: Percent }
  endVolume: Litres
  target: Percent
  /** Mean over the time. */
  carryOff: LitresPerDay
  days: Days
  /** Litres. */
  drawnOff: Litres
}

/**
 * The concentrate that bringing a sump to its target and holding it there would have taken, by its balance:
 *
 *     need = (target × (carryOff × days + drawnOff + endVolume) − concentration × volume) / 100, at least 0
 *
 * What was poured less that is what a steadier hand saves. 1 L a day of error in `carryOff` moves it by target × days / 100.
 *
 * Source: conservation of concentrate, volumes taken as additive.
 *
 * @throws {RangeError} a quantity outside the range its type gives
 * @example concentrateToHold({ start: { volume: 200, concentration: 7 }, endVolume: 200, target: 7, carryOff: 4, days: 30, drawnOff: 0 }) // 8.4
 */
export function concentrateToHold({ start, endVolume, target, carryOff, days, drawnOff }: HoldingNeed): Litres {
  requireRange('start.volume', start.volume, { min: 0 })
  requireRange('start.concentration', start.concentration, { min: 0, max: 100 })
  requireRange('endVolume', endVolume, { min: 0 })
  requireRange('target', target, { min: 0, max: 100 })
  requireRange('carryOff', carryOff, { min: 0 })
  requireRange('days', days, { min: 0 })
  requireRange('drawnOff', drawnOff, { min: 0 })
  const lost = carryOff * days + drawnOff
  return Math.max(0, (target * (lost + endVolume) - start.concentration * start.volume) / 100)
}
