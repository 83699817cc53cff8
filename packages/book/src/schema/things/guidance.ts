import { z } from 'zod'
import { id, notNegative, ph } from '../values.ts'
import { limits } from './limits.ts'

const everyDays = z.int().min(1).max(366).optional()
const above0 = z.number().gt(0)
const tested = z.looseObject({ everyDays })

/**
 * What guidance a shop goes by, and its own values: days between tests and limits. Its own may be tighter than those of the pack; what is
 * looser than a pack lets it be does not count. Days between readings of strength are the shop's `readEveryDays`.
 */
export const guidance = z.looseObject({
  /** Id of a pack of this version, or `own` for the shop's own values alone; without it none is chosen. */
  pack: id.optional(),
  /** Id of the pack's edition. */
  edition: id.optional(),
  own: z
    .looseObject({
      senses: tested.optional(),
      ph: z
        .looseObject({
          everyDays,
          /** The floor. */
          low: ph.optional(),
          /** A fall from the fresh value of more than this is acted on. */
          act: above0.max(14).optional(),
          /** A fall of more than this ends the charge. */
          change: above0.max(14).optional(),
        })
        .optional(),
      /** mg/L. */
      nitrite: z.looseObject({ everyDays, high: notNegative.optional() }).optional(),
      /** CFU/mL. */
      bacteria: z
        .looseObject({
          everyDays,
          reasonable: above0.optional(),
          poor: above0.optional(),
          /** Hours after dipping between which a slide is read, as its instructions say. */
          readFromHours: notNegative.optional(),
          readToHours: above0.optional(),
        })
        .refine(({ reasonable, poor }) => reasonable === undefined || poor === undefined || reasonable <= poor, {
          error: 'a count not below that of `reasonable`',
          path: ['poor'],
        })
        .refine(
          ({ readFromHours, readToHours }) =>
            readFromHours === undefined || readToHours === undefined || readFromHours < readToHours,
          { error: 'more hours than `readFromHours`', path: ['readToHours'] },
        )
        .optional(),
      /** mg/L as CaCO3. */
      hardness: z.looseObject({ everyDays, high: notNegative.optional() }).optional(),
      /** mg/L as NO3, of the water poured. */
      waterNitrate: z.looseObject({ high: notNegative.optional() }).optional(),
    })
    .optional(),
  /** Limits for a material or an operation, as `job` entries and a sump's `metals` name them. */
  forWork: z
    .array(z.looseObject({ material: z.string().optional(), process: z.string().optional(), limits }))
    .optional(),
})

export type Guidance = z.infer<typeof guidance>
