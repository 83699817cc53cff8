import type { Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'
import type { ValueRange } from './reported-range.ts'

export interface PhQuestion {
  now: ValueRange
  /** The first after the charge; null where nobody read it. */
  fresh: ValueRange | null
  /** Concentration then and now; null where it is not known. */
  strength: { fresh: Percent; now: Percent } | null
  /** A fall of more than this is acted on, a fall of more than that ends the charge; null where no rule says so. */
  act: number | null
  change: number | null
  /** pH under it is acted on whatever it was when fresh; null without one. */
  floor: number | null
}

/** What pH asks for. `fall` is from the fresh value, null where that is not known. */
export type PhVerdict =
  | { outcome: 'below-floor'; fall: number | null; floor: number }
  | { outcome: 'change'; fall: number }
  | { outcome: 'act'; fall: number }
  | { outcome: 'in-order'; fall: number | null }
  | { outcome: 'cannot-tell'; because: 'no-fresh' | 'steps-too-wide' | 'other-strength'; fall: number | null }

/** Strengths within this share of each other count as about the same (common practice, no source). */
const sameStrength = 0.25
const tiny = 1e-9

/**
 * pH by its fall from the fresh value at about the same strength, and a floor under it.
 *
 *     fall = fresh − now                                 act where fall > act, change where fall > change, act where now < floor
 *
 * Strips tell a range, not a figure: half-unit strips leave a fall open by a whole unit, so that a fall of 0.5 cannot be seen with
 * them. Where the range holds the threshold, that is the answer, and finer strips or a meter are what is asked for. A fluid that was made
 * weaker has a lower pH without being ill: then it is brought to its strength and read again.
 *
 * Source: DGUV Regel 109-003, Annex 3 (fall of more than 0.5: read; more than 1.0: from memory) and 7.1.1 (steps of 0.2 to 0.3: read).
 *
 * @throws {RangeError} a pH outside 0 to 14, a threshold that is not above 0
 * @example phVerdict({ now: { low: 8.6, high: 8.6 }, fresh: { low: 9.2, high: 9.2 }, strength: null, act: 0.5, change: 1, floor: null }).outcome // 'act'
 */
export function phVerdict({ now, fresh, strength, act, change, floor }: PhQuestion): PhVerdict {
  for (const [name, range] of Object.entries({ now, fresh })) {
    if (range === null) continue
    requireRange(name, range.low, { min: 0, max: 14 })
    requireRange(name, range.high, { min: range.low, max: 14 })
  }
  if (act !== null) requireRange('act', act, { above: 0 })
  if (change !== null) requireRange('change', change, { above: 0 })
  const fall = fresh === null ? null : (fresh.low + fresh.high - now.low - now.high) / 2
  if (floor !== null && now.high < floor - tiny) return { outcome: 'below-floor', fall, floor }
  const mayBeUnderFloor = floor !== null && now.low < floor - tiny && now.low < now.high
  if (fresh === null || fall === null) {
    if (mayBeUnderFloor) return { outcome: 'cannot-tell', because: 'steps-too-wide', fall }
    return act === null && change === null
      ? { outcome: 'in-order', fall }
      : { outcome: 'cannot-tell', because: 'no-fresh', fall }
  }
  const [least, most] = [fresh.low - now.high, fresh.high - now.low]
  const isWeaker = strength !== null && Math.abs(strength.now - strength.fresh) > sameStrength * strength.fresh
  const passes = (threshold: number | null, by: number) => threshold !== null && by > threshold + tiny
  if (isWeaker && passes(act ?? change, most)) return { outcome: 'cannot-tell', because: 'other-strength', fall }
  if (passes(change, least)) return { outcome: 'change', fall }
  if (passes(act, least)) return { outcome: 'act', fall }
  if (passes(act, most) || passes(change, most) || mayBeUnderFloor) {
    return { outcome: 'cannot-tell', because: 'steps-too-wide', fall }
  }
  return { outcome: 'in-order', fall }
}
