import { z } from 'zod'
import { day, id, notNegative, percent } from '../schema/values.ts'

/** What a cleanout's sheet is made for, as the entry that opens the job keeps it: the sheet is the same as long as the job lives. */
export const cleanoutValues = z.looseObject({
  volume: z.number().gt(0).max(1e6),
  heldBack: notNegative,
  cleanerPercent: percent,
  hours: z.number().min(0).max(1000),
  rinsePercent: percent,
  rinseFraction: z.number().min(0).max(1),
  rinses: z.int().min(0).max(10),
  target: percent,
  strongest: z.number().gt(0).max(100).optional(),
  solids: z.enum(['little', 'much']).nullable().optional(),
  foul: z.boolean().nullable().optional(),
  /** Names of what goes in. */
  cleaner: z.string().max(300).optional(),
  fluid: id.optional(),
  water: id.optional(),
  /** The fluid that was in it, where another comes in. */
  fromFluid: id.optional(),
  on: day.optional(),
})

export type CleanoutValues = z.infer<typeof cleanoutValues>

/** What the sheets of a standstill are made for. */
export const standstillValues = z.looseObject({ on: day.optional(), from: day.optional(), to: day.optional() })
