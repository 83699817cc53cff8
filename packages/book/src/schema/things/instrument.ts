import { z } from 'zod'
import { id, name, notNegative } from '../values.ts'

/** A refractometer, a meter or a kind of strip. */
export const instrument = z.looseObject({
  id,
  name,
  kind: z.string().optional(),
  /** The smallest step its scale shows, in its own unit. */
  resolution: z.number().gt(0).optional(),
  range: z.tuple([z.number(), z.number()]).optional(),
  /** Whether it corrects to 20 °C itself. */
  compensated: z.boolean().optional(),
  /** A strip's pads, in its own unit. */
  pads: z.array(notNegative).optional(),
})

export type Instrument = z.infer<typeof instrument>
