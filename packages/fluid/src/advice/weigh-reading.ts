import type { ExpectedReading } from '../estimate/ahead/expected-reading.ts'
import { quantile95 } from '../interval90.ts'
import type { Brix, Figure } from '../quantities.ts'

/** Where a sump stands by its records, with what a refractometer is expected to show. */
export interface StandingToRead {
  concentration: Figure
  expected: ExpectedReading
}

/** What a reading makes of it: it fits and is weighed with what was expected, or is so far off that it is to be read again. */
export type WeighedReading = { outcome: 'fits'; concentration: Figure } | { outcome: 'far' }

/** A reading further outside than this many halves of its 90 % interval is asked about: about 1 in 1000 when all is right. */
export const farHalves = 2

/**
 * A reading typed just now against what the records lead to expect: each counts by how sure it is.
 *
 *     concentration′ = concentration + gain (read − expected)
 *     sd′² = sd² − gain² sdExpected²
 *
 * A reading outside the expected interval by more than half its width is `far`: then something is wrong with it or with the records,
 * and a middle between the two would be right in neither case.
 *
 * Source: R. E. Kalman, J. Basic Engineering 82 (1960) 35.
 *
 * @example weighReading(4, { concentration, expected }) // at what was expected: the same mean, a smaller sd
 */
export function weighReading(read: Brix, { concentration, expected: { brix, gain } }: StandingToRead): WeighedReading {
  const apart = read - brix.mean
  const half = apart > 0 ? brix.high90 - brix.mean : brix.mean - brix.low90
  if (Math.abs(apart) > farHalves * half) return { outcome: 'far' }
  const mean = Math.min(100, Math.max(0, concentration.mean + gain * apart))
  const sd = Math.sqrt(Math.max(0, concentration.sd ** 2 - (gain * brix.sd) ** 2))
  const [low90, high90] = [Math.max(0, mean - quantile95 * sd), Math.min(100, mean + quantile95 * sd)]
  return { outcome: 'fits', concentration: { mean, sd, low90, high90 } }
}
