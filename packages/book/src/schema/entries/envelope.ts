import { z } from 'zod'
import { id, instant, text } from '../values.ts'

/** Made by the device that wrote the entry, UUIDv7 by preference. */
export const entryId = z.guid({ error: 'a UUID' })

/** Things that entries can be about where they are not about a sump. */
export const aboutKinds = [
  'water',
  'mixer',
  'instrument',
  'stock',
  'waste',
  'shop',
  'sump',
  'fluid',
  'container',
  'meter',
] as const

/** What an entry is about if not a sump's fluid. */
export const about = z.looseObject({ kind: z.enum(aboutKinds), id: id.optional() })

/** What every entry says, whatever its kind. */
export const envelope = {
  id: entryId,
  /** When it happened. */
  at: instant,
  /** Who did it, by id. */
  by: z.string().max(200).optional(),
  device: z.string().max(200).optional(),
  /** When it was written down, by the device's clock. */
  recordedAt: instant.optional(),
  /** What was typed, field by field, beside the canonical value. */
  typed: z.record(z.string(), z.string()).optional(),
  note: text.optional(),
  /** Pointers of fields whose implausible value the person confirmed. */
  confirmed: z.array(z.string()).optional(),
}

/** An entry about a sump's fluid. */
export const ofSump = { ...envelope, sump: id }
/** An entry about a thing of the shop. */
export const ofThing = { ...envelope, about }
/** An entry whose subject may be a sump, a thing, or given by the entry it points at. */
export const ofEither = { ...envelope, sump: id.optional(), about: about.optional() }
