import type { Days, Percent } from '../../quantities.ts'
import { above } from './mixture.ts'
import type { Untouched } from './untouched.ts'

/** The risk of standing outside the band at which somebody should look. */
export const checkedFrom = 0.05

/**
 * The first day on which a sump that nobody touches stands outside its band with a probability above 5 %, at most the days that the
 * shop's own rule, guidance or law allow: the estimate may shorten an interval, never lengthen it.
 *
 * @param within days that the rule leaves from now, not negative
 */
export function nextCheck(
  asked: Untouched,
  { band, within }: { band: { low: Percent; high: Percent } | null; within: Days },
): { days: Days; because: 'risk' | 'rule' } {
  if (band === null) return { days: within, because: 'rule' }
  for (let days = 0; days < within; days++) {
    const { strength } = asked.mixIn(days)
    if (above(strength, band.high) + 1 - above(strength, band.low) > checkedFrom) return { days, because: 'risk' }
  }
  return { days: within, because: 'rule' }
}
