import { message } from '@sumpbook/fluid'
import { z } from 'zod'
import { id, name, notNegative, risingPairs } from '../values.ts'
import { limits } from './limits.ts'

const above0 = z.number().gt(0)

/** A body of coolant and the machines on it. Volumes in litres. */
export const sump = z
  .looseObject({
    id,
    name,
    kind: z.enum(['stand-alone', 'central']).optional(),
    machines: z.array(z.string()).optional(),
    /** Today's fluid; each charge names its own. */
    fluid: id,
    /** To the brim. */
    capacity: above0.optional(),
    /** At the normal full mark, pumps stopped. */
    fillVolume: above0.optional(),
    /** The pumps' suction. */
    minVolume: notNegative.optional(),
    /** Litres out in lines and conveyor while the pumps run. */
    holdUp: notNegative.optional(),
    dipTable: risingPairs(notNegative, notNegative)
      .refine((pairs) => pairs.every(([, litres], i) => i === 0 || litres >= pairs[i - 1]![1]), {
        error: 'litres that never fall as the level rises',
      })
      .optional(),
    /** Square metres of free surface. */
    surfaceArea: above0.optional(),
    place: z.string().optional(),
    /** Where on the round it comes. */
    order: z.number().optional(),
    limits: limits.optional(),
    turnoverHours: above0.optional(),
    metals: z.array(z.string()).optional(),
  })
  .refine(({ capacity, fillVolume }) => capacity === undefined || fillVolume === undefined || fillVolume <= capacity, {
    error: message('a full mark not above the brim (`capacity`)'),
    path: ['fillVolume'],
  })
  .refine(
    ({ minVolume, fillVolume }) => minVolume === undefined || fillVolume === undefined || minVolume <= fillVolume,
    { error: message('a suction level not above the full mark (`fillVolume`)'), path: ['minVolume'] },
  )

export type Sump = z.infer<typeof sump>
