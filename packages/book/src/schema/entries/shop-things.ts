/** What was measured of, or done with, the things of the shop. */
import { z } from 'zod'
import { brix, id, notNegative, percent, ph, text } from '../values.ts'
import { ofThing } from './envelope.ts'

/** A water's dated analysis. */
export const analysis = z.looseObject({
  ...ofThing,
  kind: z.literal('analysis'),
  hardness: notNegative.optional(),
  chloride: notNegative.optional(),
  sulfate: notNegative.optional(),
  nitrate: notNegative.optional(),
  conductivity: notNegative.optional(),
  ph: ph.optional(),
})

/** A mixer's check (dial, brix, pressure) or an instrument's (zero, reference, found). */
export const check = z.looseObject({
  ...ofThing,
  kind: z.literal('check'),
  dial: z.number().optional(),
  brix: brix.optional(),
  strength: percent.optional(),
  pressure: notNegative.optional(),
  zero: z.number().optional(),
  reference: z.number().optional(),
  found: z.number().optional(),
})

export const receipt = z.looseObject({
  ...ofThing,
  kind: z.literal('receipt'),
  fluid: id.optional(),
  lot: z.string().optional(),
  litres: notNegative.optional(),
  made: z.string().optional(),
  opened: z.string().optional(),
})

export const issue = z.looseObject({
  ...ofThing,
  kind: z.literal('issue'),
  fluid: id.optional(),
  lot: z.string().optional(),
  litres: notNegative.optional(),
})

export const stored = z.looseObject({
  ...ofThing,
  kind: z.literal('stored'),
  stream: z.string().optional(),
  litres: notNegative.optional(),
})

export const pickup = z.looseObject({
  ...ofThing,
  kind: z.literal('pickup'),
  stream: z.string().optional(),
  code: z.string().optional(),
  litres: notNegative.optional(),
  document: z.string().optional(),
})

/** Words from one shift to the next. */
export const handover = z.looseObject({ ...ofThing, kind: z.literal('handover'), text: text.optional() })
