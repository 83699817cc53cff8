import { z } from 'zod'
import { id, name } from '../values.ts'

/** A bucket, can or drum that is carried to a sump. */
export const container = z.looseObject({
  id,
  name,
  /** Litres. */
  capacity: z.number().gt(0).optional(),
  /** Litres between two marks on its wall. */
  graduation: z.number().gt(0).optional(),
})

export type Container = z.infer<typeof container>
