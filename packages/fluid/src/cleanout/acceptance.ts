import { requireRange } from '../require.ts'

/** What is seen at the last rinse; null where nobody looked. */
export interface RinseSigns {
  /** Of the weak fluid before it was poured. */
  freshPh: number | null
  /** Of the same after it ran through, at the drain. */
  rinsePh: number | null
  look: 'clear' | 'dirty' | null
  smell: 'none' | 'smells' | null
}

/** Why a rinse is not accepted. */
export type RinseFault = 'cleaner-left' | 'still-dirty' | 'still-smells'

/** What to do after a rinse. */
export type RinseVerdict =
  | { outcome: 'charge' }
  | { outcome: 'rinse-again'; because: RinseFault[] }
  | { outcome: 'look-first'; missing: ('ph' | 'look' | 'smell')[] }

/** As far as strips of half a unit tell (common practice, no source). */
export const samePh = 0.5

/**
 * Whether a rinse is accepted: on its pH beside that of the weak fluid as poured (alkaline cleaner that is left lifts it), on look and on
 * smell; not on arithmetic, since dirt on walls and in dead corners gives way more slowly than any mass balance.
 *
 * Source: common practice, no source.
 *
 * @throws {RangeError} a pH outside 0 to 14
 * @example rinseVerdict({ freshPh: 9, rinsePh: 10.2, look: 'clear', smell: 'none' }) // rinse-again, cleaner-left
 */
export function rinseVerdict({ freshPh, rinsePh, look, smell }: RinseSigns): RinseVerdict {
  for (const [name, ph] of [
    ['freshPh', freshPh],
    ['rinsePh', rinsePh],
  ] as const) {
    if (ph !== null) requireRange(name, ph, { min: 0, max: 14 })
  }
  const because: RinseFault[] = []
  if (freshPh !== null && rinsePh !== null && rinsePh - freshPh > samePh + 1e-9) because.push('cleaner-left')
  if (look === 'dirty') because.push('still-dirty')
  if (smell === 'smells') because.push('still-smells')
  if (because.length > 0) return { outcome: 'rinse-again', because }
  const missing: ('ph' | 'look' | 'smell')[] = []
  if (freshPh === null || rinsePh === null) missing.push('ph')
  if (look === null) missing.push('look')
  if (smell === null) missing.push('smell')
  return missing.length > 0 ? { outcome: 'look-first', missing } : { outcome: 'charge' }
}

/** A slide of one or two weeks after a fresh charge, as a class of counts; an open end is null. */
export interface LaterSlide {
  /** CFU/mL. */
  low: number | null
  high: number | null
  /** The shop's own limit, CFU/mL. */
  limit: number
}

/** What a later slide says of a cleanout. Low growth accepts the cleaning; it clears no fluid of anything. */
export type SlideVerdict = 'accepted' | 'unclear' | 'not-accepted'

/**
 * What the slide of one or two weeks later says: growth that comes back so soon was left in a corner.
 *
 * Source: the limit is the shop's, by the guidance it goes by; the later slide is common practice.
 *
 * @throws {RangeError} a limit not above 0, counts that are negative or fall
 * @example slideVerdict({ low: null, high: 1000, limit: 10000 }) // 'accepted'
 */
export function slideVerdict({ low, high, limit }: LaterSlide): SlideVerdict {
  requireRange('limit', limit, { above: 0 })
  requireRange('low', low ?? 0, { min: 0 })
  requireRange('high', high ?? low ?? 0, { min: low ?? 0 })
  if (high !== null && high <= limit) return 'accepted'
  return low !== null && low >= limit ? 'not-accepted' : 'unclear'
}

/** Days from the fresh charge to the slide that accepts it: after one week, before two are over (common practice, no source). */
export const laterSlideDays = { earliest: 7, latest: 14 } as const
