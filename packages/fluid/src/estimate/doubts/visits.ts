import type { SumpState } from '../shop-estimate.ts'

/** Visits by how full the sump was found, and those after which a pour was written before the next. */
export interface Visits {
  made: number[]
  poured: number[]
}

/** Upper ends of the classes, as shares of the mark; the last class is open. */
const ends = [0.8, 0.86, 0.9, 0.94, 0.97]

export const noVisits = (): Visits => ({
  made: Array<number>(ends.length + 1).fill(0),
  poured: Array<number>(ends.length + 1).fill(0),
})

const classOf = (fill: number) => {
  const place = ends.findIndex((end) => fill < end)
  return place === -1 ? ends.length : place
}

/** Of a hundred pours some three are never written down (common practice, no source). */
const forgets = 0.03
/** However regular a sump's visits, a missing record may still be true. */
const mostForgotten = 0.9

/**
 * How likely it is that a sump was filled up at its last visit without anybody writing it. People fill up what they find low: where they
 * nearly always did at such a level, a missing record is likelier forgotten than true. Of the visits without a record
 *
 *     P = f q / (1 − p),  q = p / (1 − f)
 *
 * were followed by a forgotten pour, with p the share of visits at such a level that have one written and f the share of pours forgotten.
 *
 * Source: Bayes' rule.
 */
export function forgottenPour(sump: SumpState, shop: Visits): number {
  if (sump.lastFill === null || sump.pouredSince) return 0
  const level = classOf(sump.lastFill)
  const ofShop = (shop.poured[level]! + 1) / (shop.made[level]! + 2)
  const p = (sump.visits.poured[level]! + 3 * ofShop) / (sump.visits.made[level]! + 3)
  return Math.min(mostForgotten, (forgets * Math.min(1, p / (1 - forgets))) / (1 - p))
}

/** Counts the visit before this one, now that it is known whether a pour followed. */
export function visited(sump: SumpState, shop: Visits): void {
  if (sump.lastFill === null) return
  const level = classOf(sump.lastFill)
  for (const visits of [sump.visits, shop]) {
    visits.made[level]!++
    if (sump.pouredSince) visits.poured[level]!++
  }
}
