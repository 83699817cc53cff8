import { z } from 'zod'
import { id, name } from '../values.ts'

/** A counter of water or mix in a hose or line. */
export const meter = z.looseObject({
  id,
  name,
  litresPerCount: z.number().gt(0).optional(),
  sump: id.optional(),
  place: z.string().optional(),
})

export type Meter = z.infer<typeof meter>
