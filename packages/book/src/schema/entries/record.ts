/** Entries about the record itself. */
import { z } from 'zod'
import { instant, text } from '../values.ts'
import { entryId, ofEither, ofThing } from './envelope.ts'

/** A thing of the shop is new, or other from a day on: the past keeps what was true then. */
export const setup = z.looseObject({
  ...ofThing,
  kind: z.literal('setup'),
  /** Field by field, the new values; null takes a value away. */
  changes: z.record(z.string(), z.unknown()),
  /** What those fields were before, where the writer knew. */
  was: z.record(z.string(), z.unknown()).optional(),
  /** Since when; without it, since `at`. */
  from: z.union([instant, z.iso.date()], { error: 'a day or a time with offset' }).optional(),
})

/** The answer to a doubt. */
export const verdict = z.looseObject({
  ...ofEither,
  kind: z.literal('verdict'),
  entries: z.array(entryId).optional(),
  answer: z.string().optional(),
})

export const snooze = z.looseObject({
  ...ofEither,
  kind: z.literal('snooze'),
  what: z.string().optional(),
  why: text.optional(),
  until: z.union([instant, z.iso.date()], { error: 'a day or a time with offset' }).optional(),
})

export const signoff = z.looseObject({ ...ofEither, kind: z.literal('signoff'), step: z.string().optional() })

/** Withdraws one entry, a void included, for every time of asking. */
export const voidEntry = z.looseObject({
  ...ofEither,
  kind: z.literal('void'),
  entry: entryId,
  reason: text.optional(),
})
