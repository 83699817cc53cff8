import { alligation } from '../mixing/alligation.ts'
import type { MgPerLitre, Percent } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A water that a fresh charge can be made with. */
export interface FirstWater {
  id: string
  kind: 'tap' | 'well' | 'softened' | 'reverse-osmosis' | 'deionised' | null
  /** As CaCO3; null where nobody analysed it. */
  hardness: MgPerLitre | null
}

/** What the fresh charge should have, and how strong it is. */
export interface FirstFill {
  /** Hardness of the mix, by the fluid's or the sump's limits; null where they do not say. */
  low: MgPerLitre | null
  high: MgPerLitre | null
  /** Of what is poured. */
  strength: Percent
}

/** Which water a fresh charge is made with. */
export type FirstWaterChoice =
  /** One fits the limits as it is. */
  | { outcome: 'fits'; water: string; hardness: MgPerLitre }
  /** Two together come to the lower limit; `share` is of the first. */
  | { outcome: 'blend'; water: string; with: string; share: number; hardness: MgPerLitre }
  /** The limits do not say, or none reaches them: by its kind. */
  | { outcome: 'by-kind'; water: string; hardness: MgPerLitre | null; limited: boolean }
  | { outcome: 'none' }

/**
 * The water for a fresh charge, which wants some minerals: very soft water foams. The softest that brings the mix to its lower limit is taken,
 * since every fill adds to it:
 *
 *     hardness of the mix = hardness of the water × (1 − strength / 100)
 *
 * Softened water is never chosen: its sodium and chloride stay. Where no limit is known the shop's tap or well water is, as the trade does.
 *
 * Source: conservation of minerals; the choice by kind is common practice. Published first-fill ranges do not agree (178–357 mg/L IFA lexicon,
 * 80–125 mg/L Iowa Waste Reduction Center 2003, from memory), so none of them is taken by itself.
 *
 * @throws {RangeError} a strength of 100 or more, a negative hardness
 */
export function firstWater(waters: readonly FirstWater[], { low, high, strength }: FirstFill): FirstWaterChoice {
  requireRange('strength', strength, { min: 0, max: 99.9 })
  const usable = waters.filter(({ kind }) => kind !== 'softened')
  if (usable.length === 0) return { outcome: 'none' }
  const share = 1 - strength / 100
  const known = usable
    .flatMap(({ id, hardness }) => (hardness === null ? [] : [{ id, mix: hardness * share }]))
    .sort((a, b) => a.mix - b.mix)
  for (const { mix } of known) requireRange('hardness', mix, { min: 0 })
  if (low !== null || high !== null) {
    const [floor, ceiling] = [low ?? 0, high ?? Number.POSITIVE_INFINITY]
    const fitting = known.find(({ mix }) => mix >= floor && mix <= ceiling)
    if (fitting !== undefined) return { outcome: 'fits', water: fitting.id, hardness: fitting.mix }
    const soft = known.findLast(({ mix }) => mix < floor)
    const hard = known.find(({ mix }) => mix > ceiling)
    if (soft !== undefined && hard !== undefined) return blended(hard, soft, floor)
  }
  const natural = usable.find(({ kind }) => kind === 'tap' || kind === 'well') ?? usable[0]!
  const hardness = natural.hardness === null ? null : natural.hardness * share
  return { outcome: 'by-kind', water: natural.id, hardness, limited: low !== null || high !== null }
}

function blended(
  hard: { id: string; mix: number },
  soft: { id: string; mix: number },
  wanted: number,
): FirstWaterChoice {
  // Parts of a strength and parts of a hardness follow the same law; both as shares of the harder.
  const scale = 100 / hard.mix
  const parts = alligation({ first: 100, second: soft.mix * scale, wanted: wanted * scale })
  const share = parts.outcome === 'parts' ? parts.first : 1
  return { outcome: 'blend', water: hard.id, with: soft.id, share, hardness: wanted }
}
