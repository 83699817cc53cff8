import type { Reported } from '../estimate/events.ts'
import { requireRange } from '../require.ts'
import { type GermClass, germClass } from './germ-class.ts'
import type { GermClasses } from './pack.ts'

/** How a sample comes to its result. */
export type SampleMethod = 'dip slide' | 'slide for moulds' | 'standing sample' | 'laboratory'

/** The hours after sampling in which its result is read; a laboratory has no first hour that anybody here keeps. */
export interface SampleWindow {
  fromHours: number
  toHours: number
}

/**
 * What the trade's instructions say; the slide's own instructions win, and a shop can set its hours. Bacteria after one to three days, moulds
 * after three to five, a standing sample after a weekend: common practice; a laboratory is asked after two weeks.
 */
export const sampleWindows: Readonly<Record<SampleMethod, SampleWindow>> = {
  'dip slide': { fromHours: 24, toHours: 72 },
  'slide for moulds': { fromHours: 72, toHours: 120 },
  'standing sample': { fromHours: 48, toHours: 96 },
  laboratory: { fromHours: 0, toHours: 14 * 24 },
}

/** The method behind the words of an entry; what names none goes to a laboratory. */
export function sampleMethodOf(words: string | null): SampleMethod {
  const text = (words ?? '').toLowerCase()
  if (/mou?ld|fung|yeast/.test(text) && text.includes('slide')) return 'slide for moulds'
  if (text.includes('slide')) return 'dip slide'
  return text.includes('stand') ? 'standing sample' : 'laboratory'
}

/** `growing`: too early to read; `to-read`: within its window; `past`: its window has closed. */
export type SampleState = 'growing' | 'to-read' | 'past'

/** @param hours since sampling */
export function sampleState(hours: number, { fromHours, toHours }: SampleWindow): SampleState {
  requireRange('hours', hours, {})
  return hours < fromHours ? 'growing' : hours <= toHours ? 'to-read' : 'past'
}

export type SlideTiming = 'in-window' | 'early' | 'late'

/** What a slide says of its sump. */
export interface SlideRead {
  timing: SlideTiming
  /** Null where no classes are chosen, and of a slide that says nothing yet. */
  germs: GermClass | null
  /** `as-read`; `at-least`: read early, more may come; `at-most`: read late, it may have overgrown; `not-yet`: read too early to say anything. */
  counts: 'as-read' | 'at-least' | 'at-most' | 'not-yet'
  /** Whether a fresh slide is due at once. */
  isFreshSlideDue: boolean
}

/**
 * A slide by when it was read and what was seen on it. Always accepted; what it is worth depends:
 *
 * - within its window it counts as it was read;
 * - read **early**, growth that is there already counts as *at least* that; a good class says nothing yet, and the slide stays to be read;
 * - read **late**, a good class stands (more time would have shown more); a worse one counts as *at most* that, is treated as it reads, and a
 *   fresh slide is due at once.
 *
 * So a slide out of its window never makes a fluid look better than one within it would.
 *
 * Source: common practice: reading early misses growth, waiting longer makes no growth that was not there but blurs its density.
 *
 * @param hours between sampling and reading
 * @throws {RangeError} hours under 0
 * @example slideRead({ below: 1000 }, 20, { window: { fromHours: 24, toHours: 72 }, classes: { reasonable: 1e4, poor: 1e6 } }).counts // 'not-yet'
 */
export function slideRead(
  count: Reported,
  hours: number,
  { window, classes }: { window: SampleWindow; classes: GermClasses | null },
): SlideRead {
  requireRange('hours', hours, { min: 0 })
  const state = sampleState(hours, window)
  const germs = classes === null ? null : germClass(count, classes)
  if (state === 'to-read') return { timing: 'in-window', germs, counts: 'as-read', isFreshSlideDue: false }
  if (state === 'growing') {
    const saysNothing = germs === null || isFine(germs)
    return {
      timing: 'early',
      germs: saysNothing ? null : germs,
      counts: saysNothing ? 'not-yet' : 'at-least',
      isFreshSlideDue: false,
    }
  }
  const stands = germs !== null && isFine(germs)
  return { timing: 'late', germs, counts: stands ? 'as-read' : 'at-most', isFreshSlideDue: germs !== null && !stands }
}

/** Of a late slide it stands, of an early one it says nothing yet. */
const isFine = (germs: GermClass) => germs === 'good' || germs === 'under-limit'
