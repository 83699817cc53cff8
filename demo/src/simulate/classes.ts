/** What a strip or a slide can say. */
export type ValueClass = { below: number } | { low: number; high: number } | { atLeast: number }

/** The pads that a value lies between. */
export function padsAbout(pads: readonly number[], value: number): ValueClass {
  const above = pads.findIndex((pad) => pad > value)
  if (above === -1) return { atLeast: pads.at(-1)! }
  if (above === 0) return { below: pads[0]! }
  return { low: pads[above - 1]!, high: pads[above]! }
}

/** The class of growth on a slide, CFU/mL, from 10³ to 10⁷ in tens. */
export const slideClass = (log10: number): ValueClass => padsAbout([1e3, 1e4, 1e5, 1e6, 1e7], 10 ** log10)
