import type { Days, Figure } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** What an additive's label allows, as somebody of the shop typed it from the label; amounts of product in a litre of mix. */
export interface DoseLabel {
  /** The least and the most of one dose; null where nobody typed it. */
  low: number | null
  high: number | null
  /** Days that must lie between two doses; null where the label says nothing of it, or nobody typed it. */
  minimumDays: Days | null
  /** The most within so many days, all doses together; null as before. */
  most: { amount: number; days: Days } | null
}

/** A dose that went in since the charge. */
export interface GivenDose {
  daysAgo: Days
  /** Millilitres or grams, as the label; null where nobody measured it. */
  amount: number | null
}

export interface DoseQuestion {
  label: DoseLabel
  /** Of the whole system; null where no record tells of it. */
  volume: Pick<Figure, 'mean' | 'low90' | 'high90'> | null
  /** Doses of this additive since the charge. */
  given: readonly GivenDose[]
  /** pH falls and nobody has said why. */
  isFallUnexplained: boolean
  /** Nitrite would come to amines, or amines to nitrite. */
  isNitriteWithAmines: boolean
  /** A record of the sump does not fit. */
  inDoubt: boolean
}

/** How much goes in, or why nothing does. Amounts in millilitres or grams, as the label. */
export type DoseAnswer =
  | {
      outcome: 'dose'
      /** What brings the label's least dose, and what its most leaves. */
      least: number
      most: number
      /** The volume it is made for: the low end of its interval. */
      volume: number
      /** What `most` comes to in a litre should the sump hold as much as the high end. */
      thinnest: number
      /** What went in within the label's days already. */
      already: number
    }
  | { outcome: 'nitrite-with-amines' }
  | { outcome: 'cause-first' }
  | { outcome: 'label-missing'; missing: 'dose' | 'interval' }
  | { outcome: 'doubt' }
  | { outcome: 'volume-unknown' }
  | { outcome: 'too-soon'; inDays: Days }
  | { outcome: 'used-up'; already: number; inDays: Days }
  | { outcome: 'unmeasured'; inDays: Days }

/**
 * How much of an additive a sump may be given: within what its label allows and never more, for the least volume that the sump is likely to
 * hold, less what went in already.
 *
 *     least = low × volume.low90 − already        most = min(high × volume.low90, most.amount × volume.low90 − already)
 *
 * Made for the low end of the 90 % interval of the volume a dose is over the label's most with a chance of 1 in 20; should the sump hold
 * more, it is thinner than meant (`thinnest`). Without the label's limits there is no dose, and where something went in before, none
 * without the label's days either. What stands against any dose is said first: nitrite with amines, a falling pH without a cause.
 *
 * Source: the label that the user typed; amount = concentration × volume. No nitrite with amines: TRGS 611, 40 CFR 747 and 721.4740
 * (read). The cause before the dose: from memory.
 *
 * @throws {RangeError} limits in the wrong order, an amount or a time below 0
 * @example dose({ label: { low: 1, high: 2, minimumDays: 7, most: null }, volume: { mean: 220, low90: 200, high90: 240 }, given: [], isFallUnexplained: false, isNitriteWithAmines: false, inDoubt: false }) // least 200, most 400
 */
export function dose(question: DoseQuestion): DoseAnswer {
  const { label, volume, given, isFallUnexplained, isNitriteWithAmines, inDoubt } = question
  requireLabel(label)
  for (const { daysAgo, amount } of given) {
    requireRange('daysAgo', daysAgo, { min: 0 })
    if (amount !== null) requireRange('amount', amount, { min: 0 })
  }
  const { low, high, minimumDays, most } = label
  if (isNitriteWithAmines) return { outcome: 'nitrite-with-amines' }
  if (isFallUnexplained) return { outcome: 'cause-first' }
  if (low === null || high === null) return { outcome: 'label-missing', missing: 'dose' }
  if (inDoubt) return { outcome: 'doubt' }
  if (volume === null || !(volume.low90 > 0)) return { outcome: 'volume-unknown' }
  if (given.length > 0 && minimumDays === null && most === null)
    return { outcome: 'label-missing', missing: 'interval' }
  const last = Math.min(...given.map(({ daysAgo }) => daysAgo))
  if (minimumDays !== null && last < minimumDays) return { outcome: 'too-soon', inDays: minimumDays - last }
  const counted = most === null ? [] : given.filter(({ daysAgo }) => daysAgo < most.days)
  const inDays = most === null ? 0 : most.days - Math.max(0, ...counted.map(({ daysAgo }) => daysAgo))
  if (counted.some(({ amount }) => amount === null)) return { outcome: 'unmeasured', inDays }
  const already = counted.reduce((sum, { amount }) => sum + amount!, 0)
  const leaves = most === null ? Number.POSITIVE_INFINITY : most.amount * volume.low90 - already
  const upTo = Math.min(high * volume.low90, leaves)
  const least = low * volume.low90
  // A dose under the label's least is no dose of the label.
  if (upTo < least * (1 - 1e-12) || !(upTo > 0)) return { outcome: 'used-up', already, inDays }
  return { outcome: 'dose', least, most: upTo, volume: volume.low90, thinnest: upTo / volume.high90, already }
}

/** A dose that went in and was more than its label allows. */
export type OverLabel =
  | { kind: 'over-most'; perLitre: number; allowed: number }
  | { kind: 'too-soon'; daysBefore: Days; minimumDays: Days }
  | { kind: 'over-total'; perLitre: number; allowed: number; days: Days }

/**
 * How a dose that went in goes against its label: null where it does not, or where that cannot be told. Judged by the mean volume of
 * then, so that only what is likely over is called so.
 *
 * @param before earlier doses, days before this one
 */
export function overLabel(
  given: { amount: number | null; volume: number | null },
  before: readonly { daysBefore: Days; amount: number | null }[],
  { high, minimumDays, most }: DoseLabel,
): OverLabel | null {
  const last = Math.min(...before.map(({ daysBefore }) => daysBefore))
  if (minimumDays !== null && last < minimumDays) return { kind: 'too-soon', daysBefore: last, minimumDays }
  const { amount, volume } = given
  if (amount === null || volume === null || !(volume > 0)) return null
  const over = (value: number, allowed: number) => value > allowed * (1 + 1e-9)
  if (high !== null && over(amount / volume, high)) {
    return { kind: 'over-most', perLitre: amount / volume, allowed: high }
  }
  if (most === null) return null
  const within = before.filter(({ daysBefore }) => daysBefore < most.days)
  const total = within.reduce((sum, one) => sum + (one.amount ?? 0), amount) / volume
  return over(total, most.amount)
    ? { kind: 'over-total', perLitre: total, allowed: most.amount, days: most.days }
    : null
}

function requireLabel({ low, high, minimumDays, most }: DoseLabel): void {
  if (low !== null) requireRange('low', low, { min: 0 })
  if (high !== null) requireRange('high', high, { above: 0, ...(low === null ? {} : { min: low }) })
  if (minimumDays !== null) requireRange('minimumDays', minimumDays, { min: 0 })
  if (most !== null) {
    requireRange('most', most.amount, { above: 0, ...(high === null ? {} : { min: high }) })
    requireRange('days', most.days, { above: 0 })
  }
}
