/** The kinds of entries a journal holds. */
import { z } from 'zod'
import { id } from '../values.ts'
import { cleanout, idle, job, observation, skip, upkeep } from './care.ts'
import { about, envelope } from './envelope.ts'
import { addition, charge, drawoff, skim, transfer } from './pouring.ts'
import { reading } from './reading.ts'
import { setup, signoff, snooze, verdict, voidEntry } from './record.ts'
import { analysis, check, handover, issue, order, pickup, receipt, stored } from './shop-things.ts'

export { aboutKinds, entryId } from './envelope.ts'
export { measured } from './reading.ts'

const kinds = [
  charge,
  addition,
  reading,
  drawoff,
  transfer,
  skim,
  job,
  idle,
  cleanout,
  upkeep,
  observation,
  analysis,
  check,
  order,
  receipt,
  issue,
  stored,
  pickup,
  handover,
  setup,
  verdict,
  skip,
  snooze,
  signoff,
  voidEntry,
] as const

/** Any entry of a kind this version knows. */
export const entry = z.discriminatedUnion('kind', kinds)
/** The names of those kinds. */
export const entryKinds: readonly Entry['kind'][] = kinds.map((kind) => kind.shape.kind.value)

/** What can be said of an entry of a kind that only a newer version knows. */
export const unknownEntry = z.looseObject({
  ...envelope,
  kind: z.string().min(1).max(200),
  sump: id.optional(),
  about: about.optional(),
})

export type Entry = z.infer<typeof entry>
export type EntryOf<K extends Entry['kind']> = Extract<Entry, { kind: K }>
export type Reading = EntryOf<'reading'>
export type Setup = EntryOf<'setup'>
