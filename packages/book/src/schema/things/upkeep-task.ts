import { z } from 'zod'
import { aboutKinds } from '../entries/envelope.ts'
import { id, name, text } from '../values.ts'

/** Something that is done again and again, as the shop set it. */
export const upkeepTask = z.looseObject({
  id,
  /** "Chip basket emptied", as the entry that says it was done has it. */
  task: name,
  /** Where it is done; without either it is the shop's. */
  sump: id.optional(),
  about: z.looseObject({ kind: z.enum(aboutKinds), id: id.optional() }).optional(),
  everyDays: z.int().min(1).max(1000),
  /** The kind of entry that says it was done; `upkeep` of these words without it. */
  counts: z.enum(['upkeep', 'skim', 'check', 'analysis']).optional(),
  /** The day from which the shop does it. */
  from: z.iso.date().optional(),
  /** What to mind while doing it, in the shop's own words. */
  caution: text.optional(),
})

export type UpkeepTask = z.infer<typeof upkeepTask>
