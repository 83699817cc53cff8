import { trueMarks } from '@sumpbook/fluid'
import type { Condition, SumpItem } from './today.ts'

/** A fill of this share of the mark or more is worth a walk (common practice, no source). */
const worthAWalk = 0.1

/** A sump with its recipe, before it is judged. */
export type Judged = Omit<SumpItem, 'condition' | 'sentence' | 'why' | 'ahead'>

/** What a condition comes from. */
export type Judging = Pick<Judged, 'recipe' | 'concentration' | 'bench' | 'mark' | 'volume'>

/**
 * Why a sump is on the list, or `in-order`.
 *
 * @param isDue whether it is time to read it
 */
export function conditionOf({ recipe, concentration, bench, mark, volume }: Judging, isDue: boolean): Condition {
  const { because, add, action } = recipe
  if (action === 'refuse') return 'straight-oil'
  if (because.includes('below-suction')) return 'below-suction'
  if (because.includes('doubt')) return 'doubt'
  if (because.includes('above-brim')) return 'over-full'
  if (action === 'measure-first' && because.some((reason) => reason !== 'level-unknown')) return 'measure-first'
  const { low = 0, high = 100 } = bench.band ?? {}
  if (concentration !== null && concentration.mean < low) return 'lean'
  if (concentration !== null && concentration.mean > high) return 'rich'
  const { fillVolume } = trueMarks(bench, mark)
  if (volume !== null && fillVolume !== null && add !== null && add.volume >= worthAWalk * fillVolume)
    return 'low-level'
  return isDue ? 'unread' : 'in-order'
}

/** A sump that wants something. */
export const isListed = (condition: Condition) => condition !== 'in-order' && condition !== 'straight-oil'

/** What stands at the pump or runs over is never put off, and the cap of new things does not touch it. */
export const isExempt = (condition: Condition) => condition === 'below-suction' || condition === 'over-full'

/** So much of its band a strength must have come back inside before it can leave it anew (common practice, no source). */
const backInside = 0.1

/** Conditions that flicker around a limit. */
export type Flickering = 'lean' | 'rich' | 'low-level'

/** Whether a sump is clear of a condition, not only just on the other side of its limit. */
export function isClearOf(condition: Flickering, { recipe, concentration, bench, mark }: Judging): boolean {
  if (condition === 'low-level') {
    const { fillVolume } = trueMarks(bench, mark)
    return recipe.add === null || fillVolume === null || recipe.add.volume < 0.5 * worthAWalk * fillVolume
  }
  if (concentration === null || bench.band === null) return true
  const { low, high } = bench.band
  const margin = backInside * (high - low)
  return condition === 'lean' ? concentration.mean >= low + margin : concentration.mean <= high - margin
}

/** 0 is gravest. */
export const consequence: Record<Condition, number> = {
  'below-suction': 0,
  'over-full': 1,
  lean: 2,
  rich: 3,
  doubt: 4,
  'measure-first': 5,
  'low-level': 6,
  unread: 7,
  'in-order': 8,
  'straight-oil': 9,
}

/** The condition first; within it how far outside its band, in widths of the band; then the walk. */
export function byConsequence(a: SumpItem, b: SumpItem): number {
  return consequence[a.condition] - consequence[b.condition] || distance(b) - distance(a) || inWalkingOrder(a, b)
}

/** How far outside its band, in widths of the band. */
export function distance({ concentration, bench: { band } }: Pick<Judging, 'concentration' | 'bench'>): number {
  if (concentration === null || band === null) return 0
  const outside = Math.max(band.low - concentration.mean, concentration.mean - band.high, 0)
  return outside / Math.max(band.high - band.low, 0.1)
}

/** In the order of the round, then by name, numbers in names by their size. */
export function inWalkingOrder(a: Pick<SumpItem, 'order' | 'name'>, b: Pick<SumpItem, 'order' | 'name'>): number {
  const byOrder = (a.order ?? Number.POSITIVE_INFINITY) - (b.order ?? Number.POSITIVE_INFINITY)
  return byOrder !== 0 && !Number.isNaN(byOrder) ? byOrder : names.compare(a.name, b.name)
}
const names = new Intl.Collator('en', { numeric: true })
