import type { Term } from '../calendar/day-number.ts'

/** A time that waste may wait, as a law has it, offered to choose from. */
export interface TermProposal extends Term {
  source: string
  /** Whom it is for, and what it hangs on. */
  words: string
  tag: 'read' | 'from memory'
}

/**
 * Storage terms that a shop may be under. None is set by itself: the shop's permit, its authority and its carrier say which holds, and most
 * countries have more than one.
 *
 * Source: beside each.
 */
export const termProposals: readonly TermProposal[] = [
  {
    count: 90,
    unit: 'days',
    source: '40 CFR 262.17(a)',
    words:
      'US, hazardous waste of a large quantity generator, from the first drop into a container that is no satellite one',
    tag: 'from memory',
  },
  {
    count: 180,
    unit: 'days',
    source: '40 CFR 262.16(b)',
    words: 'US, hazardous waste of a small quantity generator; 270 days where it goes farther than 200 miles',
    tag: 'from memory',
  },
  {
    count: 1,
    unit: 'years',
    source: 'Directive 1999/31/EC, Article 2(g)',
    words: 'EU, storage before disposal for less than a year is no landfill; permits are often shorter',
    tag: 'from memory',
  },
  {
    count: 3,
    unit: 'years',
    source: 'Directive 1999/31/EC, Article 2(g)',
    words: 'EU, storage before recovery or treatment, as a rule less than three years; permits are often shorter',
    tag: 'from memory',
  },
]
