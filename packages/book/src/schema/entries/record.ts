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

/**
 * A step of a job sheet that somebody put their name to; also a job's beginning (`opened`) and end, and who claims something before doing it
 * (`claimed`, `released`).
 */
export const signoff = z.looseObject({
  ...ofEither,
  kind: z.literal('signoff'),
  step: z.string().max(200).optional(),
  /** The job, named by the entry that opened it. */
  job: entryId.optional(),
  /** Which sheet it follows, in the entry that opens a job. */
  sheet: z.string().max(100).optional(),
  /** What was read at the step, or what a sheet is made for. */
  values: z.record(z.string(), z.unknown()).optional(),
  /** What is claimed or released: `pour:mill3`, a duty's key. */
  claim: z.string().min(1).max(500).optional(),
  /** When a claim ends by itself. */
  until: instant.optional(),
})

/** Withdraws one entry, a void included, for every time of asking. */
export const voidEntry = z.looseObject({
  ...ofEither,
  kind: z.literal('void'),
  entry: entryId,
  reason: text.optional(),
})
