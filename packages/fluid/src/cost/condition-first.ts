import { type SignId, signCalled } from '../diagnosis/index.ts'

/** What takes a charge out of every reckoning of money. */
export const conditionFindings: readonly SignId[] = [
  'emulsion split',
  'rancid smell',
  'rotten-egg smell',
  'skin irritation',
  'eye or throat irritation',
  'cough or chest tightness',
  'fever or aching after work',
]

/** What was seen, smelt and counted of a charge. */
export interface ChargeCondition {
  /** As they stand in observations, in whatever words. */
  signs: readonly string[]
  /** The last count, CFU/mL, as far as it says one; null without one. */
  bacteria: number | null
  /** The most that the fluid's sheet or the shop allows; null where nobody said. */
  bacteriaHigh: number | null
}

/**
 * The first finding for which a charge goes now, whatever its age and whatever the money: split, septic, or a complaint of somebody's skin, eyes or breath. Null
 * where there is none, which says nothing of it being good.
 *
 * @example conditionFirst({ signs: ['split'], bacteria: null, bacteriaHigh: null }) // 'emulsion split'
 */
export function conditionFirst({ signs, bacteria, bacteriaHigh }: ChargeCondition): SignId | 'bacteria' | null {
  const found = new Set(signs.map(signCalled))
  const first = conditionFindings.find((finding) => found.has(finding))
  if (first !== undefined) return first
  return bacteria !== null && bacteriaHigh !== null && bacteria >= bacteriaHigh ? 'bacteria' : null
}
