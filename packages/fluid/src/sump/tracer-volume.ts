import { quantile95 } from '../interval90.ts'
import type { Litres, Percent, Sd } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A measured addition and the concentration before and after it, the sump circulated well in between. */
export interface TracerStep {
  before: Percent
  after: Percent
  /** Above 0. */
  added: Litres
  /** Of what was added: 100 for neat concentrate, which is the default; 0 for plain water. */
  strength?: Percent | undefined
  /** Of each of the two readings; default 0. */
  sd?: Sd | undefined
}

/** The volume, or why the step does not give one. */
export type TracerVolume =
  | {
      outcome: 'volume'
      /** In the sump **before** the addition. */
      volume: Litres
      low90: Litres
      high90: Litres
    }
  /** The readings' doubt is as large as the step: no upper end to the volume can be given. */
  | { outcome: 'too-small'; step: Percent; smallestStep: Percent }
  /** The concentration moved away from the strength of what was added, or beyond it: a misreading, or something else was poured. */
  | { outcome: 'wrong-way' }

/**
 * The volume of a sump from how far a known addition moves its concentration. The concentrate there and the concentrate
 * added are all in the sump afterwards:
 *
 *     volume · before + added · strength = (volume + added) · after
 *     volume = added · (strength − after) / (after − before)
 *
 * It is the fluid **before** the addition; after it there are `volume + added` litres. All the fluid that takes part in the circulation counts,
 * what is out in the lines included; fluid in dead corners does not.
 *
 * The volume is a ratio of two uncertain numbers, so its interval is not symmetric. Taken are all volumes that the two readings do not
 * contradict at 90 % (Fieller): those with
 *
 *     (volume · (before − after) + added · (strength − after))² ≤ z² sd² (volume² + (volume + added)²)        z = 1.645
 *
 * They have an upper end only while |after − before| > √2 z sd.
 *
 * Source: mass balance; E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175–185.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example tracerVolume({ before: 4, after: 6, added: 8.5106 }) // { outcome: 'volume', volume: 400.0, … }
 */
export function tracerVolume({ before, after, added, strength = 100, sd = 0 }: TracerStep): TracerVolume {
  requireRange('before', before, { min: 0, max: 100 })
  requireRange('after', after, { min: 0, max: 100 })
  requireRange('added', added, { above: 0 })
  requireRange('strength', strength, { min: 0, max: 100 })
  requireRange('sd', sd, { min: 0 })

  const step = after - before
  const rest = strength - after
  const doubt = quantile95 * sd
  const smallestStep = Math.SQRT2 * doubt
  if (Math.abs(step) <= smallestStep) return { outcome: 'too-small', step, smallestStep }
  if (rest * step <= 0) return { outcome: 'wrong-way' }

  // In multiples of the addition: a·r² − 2b·r + c ≤ 0, with real roots wherever a > 0, since the estimate itself satisfies it.
  const a = step ** 2 - 2 * doubt ** 2
  const b = rest * step + doubt ** 2
  const c = rest ** 2 - doubt ** 2
  const far = b + Math.sqrt(Math.max(0, b ** 2 - a * c))
  const volume = (added * rest) / step
  return {
    outcome: 'volume',
    volume,
    low90: Math.min(volume, Math.max(0, (added * c) / far)),
    high90: Math.max(volume, (added * far) / a),
  }
}
