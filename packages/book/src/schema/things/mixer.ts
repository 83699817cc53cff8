import { z } from 'zod'
import { id, name, percent } from '../values.ts'

/** A proportioner: what each setting of its dial gives. */
export const mixer = z.looseObject({
  id,
  name,
  settings: z.array(z.tuple([z.number(), percent])).optional(),
})

export type Mixer = z.infer<typeof mixer>
