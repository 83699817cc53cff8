import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** Waste of one kind in a span of days. */
export interface WasteSums {
  /** What the sumps gave: drawn off, skimmed, from cleanouts. */
  given: Litres
  /** What was written as put into containers. */
  stored: Litres
}

/** Whether what the sumps gave came into the containers. */
export type Reconciled =
  | { outcome: 'nothing' }
  | { outcome: 'agrees' }
  /** Less arrived than left the sumps: not written, or gone another way. */
  | { outcome: 'lost'; litres: Litres }
  /** More arrived than left the sumps: a draw-off or a cleanout was not written. */
  | { outcome: 'gained'; litres: Litres }

/** What reading a level by eye may be off by: a share, and litres. */
const byEyeShare = 0.1
const byEyeLitres = 20

/**
 * What the sumps gave beside what came into the containers:
 *
 *     difference = stored − given                agrees within max(20 L, 10 % of the larger)
 *
 * The tolerance is that of buckets and gauges read by eye: common practice, no source.
 *
 * @throws {RangeError} litres below 0
 * @example reconciled({ given: 400, stored: 300 }) // lost, 100
 */
export function reconciled({ given, stored }: WasteSums): Reconciled {
  requireRange('given', given, { min: 0 })
  requireRange('stored', stored, { min: 0 })
  if (given === 0 && stored === 0) return { outcome: 'nothing' }
  const difference = stored - given
  if (Math.abs(difference) <= Math.max(byEyeLitres, byEyeShare * Math.max(given, stored))) return { outcome: 'agrees' }
  return difference < 0 ? { outcome: 'lost', litres: -difference } : { outcome: 'gained', litres: difference }
}
