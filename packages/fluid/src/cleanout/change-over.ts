/** What is known of a fluid that goes out or comes in. Null: nobody said. */
export interface FluidTold {
  id: string
  class: 'soluble-oil' | 'semi-synthetic' | 'synthetic' | 'straight-oil' | null
  /** Words of its safety data sheet: "nitrite", "amines", "secondary amines". Null where nobody looked. */
  contains: readonly string[] | null
}

/** Why two fluids are kept apart. */
export type ApartBecause = 'oil-and-water' | 'nitrite-and-amines' | 'contents-unknown' | 'other-class' | 'other-product'

/** What a change from one fluid to another asks for. */
export type ChangeOver =
  /** The same product: what stays in corners does no harm beyond its age. */
  | { outcome: 'same-product' }
  /** They must not meet, not even the heel. */
  | { outcome: 'never-meet'; because: ApartBecause[] }
  /** A full cleanout, and the supplier's word in writing before the heel meets the new fluid. */
  | { outcome: 'supplier-first'; because: ApartBecause[] }

/**
 * Whether two fluids may meet in a sump. A straight oil and a water-mix must not, nor nitrite with amines, which together form
 * nitrosamines. Of everything else only the suppliers know: a full cleanout, and their word.
 *
 * Source: TRGS 611, 40 CFR 747 and 721.4740 (nitrite with amines); the rest common practice, no source.
 *
 * @example changeOver({ id: 'a', class: 'straight-oil', contains: null }, { id: 'b', class: 'synthetic', contains: null }) // never-meet
 */
export function changeOver(from: FluidTold, to: FluidTold): ChangeOver {
  if (from.id === to.id) return { outcome: 'same-product' }
  const never: ApartBecause[] = []
  const [fromOil, toOil] = [from, to].map((fluid) => fluid.class === 'straight-oil')
  if (fromOil !== toOil && from.class !== null && to.class !== null) never.push('oil-and-water')
  if ((has(from, 'nitrite') && has(to, 'amine')) || (has(from, 'amine') && has(to, 'nitrite'))) {
    never.push('nitrite-and-amines')
  }
  if (never.length > 0) return { outcome: 'never-meet', because: never }
  const because: ApartBecause[] = []
  if (from.contains === null || to.contains === null) because.push('contents-unknown')
  because.push(from.class === to.class && from.class !== null ? 'other-product' : 'other-class')
  return { outcome: 'supplier-first', because }
}

/** "Amines", "secondary amine", "Nitrite (sodium)". */
const has = ({ contains }: FluidTold, word: 'nitrite' | 'amine') =>
  contains?.some((text) => new RegExp(`\\b${word}s?\\b`, 'i').test(text)) === true
