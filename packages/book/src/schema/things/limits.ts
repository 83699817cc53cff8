import { z } from 'zod'
import { notNegative, percent, ph } from '../values.ts'

const rising = { error: 'low ≤ target ≤ high' }

/** A floor and a ceiling, either may be missing. */
const between = (value: z.ZodNumber) =>
  z
    .looseObject({ low: value.optional(), high: value.optional() })
    .refine(({ low, high }) => low === undefined || high === undefined || low <= high, rising)
const ceiling = z.looseObject({ high: notNegative.optional() })

/** What a fluid or a sump is kept between. Concentration in percent, pH, the rest in mg/L, mS/cm, CFU/mL and percent. */
export const limits = z.looseObject({
  concentration: z
    .looseObject({ low: percent.optional(), target: percent.optional(), high: percent.optional() })
    .refine(({ low, target, high }) => {
      const known = [low, target, high].filter((value) => value !== undefined)
      return known.every((value, i) => i === 0 || known[i - 1]! <= value)
    }, rising)
    .optional(),
  ph: between(ph).optional(),
  hardness: between(notNegative).optional(),
  chloride: ceiling.optional(),
  conductivity: ceiling.optional(),
  bacteria: ceiling.optional(),
  trampOil: ceiling.optional(),
  nitrite: ceiling.optional(),
})

export type Limits = z.infer<typeof limits>
