import { z } from 'zod'
import { id, name, text } from '../values.ts'

/** A tank, drum or skip in which one stream of waste waits for its carrier. */
export const wasteContainer = z.looseObject({
  id,
  name,
  /** As the shop calls it: "Used emulsion". */
  stream: z.string().optional(),
  /** What is in it, for the balance with what the sumps gave. */
  kind: z.enum(['emulsion', 'oil', 'sludge', 'rinse', 'other']).optional(),
  /** Of the waste list that holds here, as the shop chose it. */
  code: z.string().optional(),
  /** Litres. */
  capacity: z.number().gt(0).optional(),
  /** Kilograms a litre, where a carrier weighs. */
  density: z.number().gt(0).optional(),
  /** How long it may wait, by what. */
  term: z
    .looseObject({
      count: z.int().min(1).max(10_000),
      unit: z.enum(['days', 'months', 'years']),
      /** The law, permit or contract that says so. */
      source: text.optional(),
      /** `first`: from the first drop after a pickup. `full`: from the day it was full. */
      from: z.enum(['first', 'full']).optional(),
    })
    .optional(),
  place: z.string().optional(),
})

export type WasteContainer = z.infer<typeof wasteContainer>
