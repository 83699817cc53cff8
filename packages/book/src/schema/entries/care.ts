/** What was done to a sump, seen at it, and how it was used. */
import { z } from 'zod'
import { instant, notNegative, percent, text } from '../values.ts'
import { ofSump } from './envelope.ts'

export const job = z.looseObject({
  ...ofSump,
  kind: z.literal('job'),
  material: z.string().optional(),
  process: z.string().optional(),
})

/** The machine stood from one instant to another. */
export const idle = z
  .looseObject({ ...ofSump, kind: z.literal('idle'), from: instant.optional(), to: instant.optional() })
  .refine(({ from, to }) => from === undefined || to === undefined || Date.parse(from) <= Date.parse(to), {
    error: 'a time not before `from`',
    path: ['to'],
  })

export const cleanout = z.looseObject({
  ...ofSump,
  kind: z.literal('cleanout'),
  cleaner: z.string().optional(),
  cleanerPercent: percent.optional(),
  hours: notNegative.optional(),
  rinses: z.int().min(0).optional(),
  /** Litres. */
  wasteVolume: notNegative.optional(),
  checklist: z.array(z.unknown()).optional(),
})

export const upkeep = z.looseObject({
  ...ofSump,
  kind: z.literal('upkeep'),
  task: z.string().optional(),
  result: z.string().optional(),
  values: z.record(z.string(), z.unknown()).optional(),
})

/** Signs seen, smelt or felt; no names of people and no diagnoses. */
export const observation = z.looseObject({
  ...ofSump,
  kind: z.literal('observation'),
  signs: z.array(z.string()).optional(),
  severity: z.union([z.string(), z.number()]).optional(),
  photo: z.string().optional(),
})

/** A machine passed by on the round. */
export const skip = z.looseObject({ ...ofSump, kind: z.literal('skip'), reason: text.optional() })
