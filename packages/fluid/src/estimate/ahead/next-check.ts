import type { Days, Percent } from '../../quantities.ts'
import type { ShopTime } from '../events.ts'
import type { ShopEstimate } from '../shop-estimate.ts'
import { strength } from '../state.ts'
import { dropAll, later, partsOf, sumpIn } from './estimate-sump.ts'
import { above } from './mixture.ts'

/** The risk of standing outside the band at which somebody should look. */
export const checkedFrom = 0.05

/**
 * The first day on which a sump that nobody touches stands outside its band with a probability above 5 %, at most the days that the
 * shop's own rule, guidance or law allow: the estimate may shorten an interval, never lengthen it.
 *
 * @param within days that the rule leaves from now, not negative
 */
export function nextCheck(
  shop: ShopEstimate,
  id: string,
  at: ShopTime,
  { band, within }: { band: { low: Percent; high: Percent } | null; within: Days },
): { days: Days; because: 'risk' | 'rule' } {
  if (band === null) return { days: within, because: 'rule' }
  const sump = sumpIn(shop, id)
  const now = Math.max(at, sump.at)
  for (let days = 0; days < within; days++) {
    const then = later(shop, sump, now + days)
    const parts = partsOf(then, strength)
    dropAll(then)
    if (above(parts, band.high) + 1 - above(parts, band.low) > checkedFrom) return { days, because: 'risk' }
  }
  return { days: within, because: 'rule' }
}
