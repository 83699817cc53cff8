import type { Reported } from '../estimate/events.ts'
import { requireRange } from '../require.ts'
import type { GermClasses } from './pack.ts'
import { rangeOf } from './reported-range.ts'

/** `under-limit`: not poor, where nobody says what is good. */
export type GermClass = 'good' | 'under-limit' | 'reasonable' | 'poor'

/**
 * The class of a count of germs.
 *
 *     good < reasonable ≤ reasonable < poor ≤ poor                      each bound belongs to the worse class
 *
 * A slide names a range of counts and not a figure: where the range reaches into two classes, the worse one counts, since it may be so.
 *
 * How wrong: a slide is right to about a factor of ten (common practice), and counts only what grows on it. A good class clears no fluid.
 *
 * Source: HSE (UK), bacterial contamination: its bounds are in the packs.
 *
 * @throws {RangeError} bounds that are no numbers above 0 or do not rise
 * @example germClass({ low: 1000, high: 10_000 }, { reasonable: 10_000, poor: 1_000_000 }) // 'good'
 */
export function germClass(count: Reported, { reasonable, poor }: GermClasses): GermClass {
  if (reasonable !== null) requireRange('reasonable', reasonable, { above: 0 })
  requireRange('poor', poor, reasonable === null ? { above: 0 } : { min: reasonable })
  const { low, high } = rangeOf(count)
  const reaches = (bound: number) => (low === high ? high >= bound : high > bound)
  if (reaches(poor)) return 'poor'
  return reasonable === null ? 'under-limit' : reaches(reasonable) ? 'reasonable' : 'good'
}
