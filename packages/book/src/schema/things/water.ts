import { z } from 'zod'
import { id, name, notNegative, ph } from '../values.ts'

/** A water the shop can pour, as last analysed. */
export const water = z.looseObject({
  id,
  name,
  kind: z.enum(['tap', 'well', 'softened', 'reverse-osmosis', 'deionised']).optional(),
  hardness: notNegative.optional(),
  chloride: notNegative.optional(),
  sulfate: notNegative.optional(),
  nitrate: notNegative.optional(),
  conductivity: notNegative.optional(),
  ph: ph.optional(),
  costPerLitre: notNegative.optional(),
})

export type Water = z.infer<typeof water>
