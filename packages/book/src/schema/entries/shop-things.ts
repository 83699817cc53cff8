/** What was measured of, or done with, the things of the shop. */
import { z } from 'zod'
import { brix, day, id, notNegative, percent, ph, text } from '../values.ts'
import { entryId, ofThing } from './envelope.ts'

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

/**
 * A mixer's check (dial, brix, pressure), an instrument's (zero, reference, found), a count of a fluid's stock (`found` litres, of
 * one `lot` or of all), a waste container's level (`found` litres), or the `document` of a pickup that came later (`answers` it).
 */
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
  lot: z.string().optional(),
  answers: entryId.optional(),
  document: z.string().optional(),
})

/** Concentrate that was ordered and is awaited. */
export const order = z.looseObject({
  ...ofThing,
  kind: z.literal('order'),
  fluid: id.optional(),
  litres: notNegative.optional(),
  /** The day on which the supplier means to deliver. */
  expectedOn: day.optional(),
})

/** Concentrate that arrived, as it was found on arrival. */
export const receipt = z.looseObject({
  ...ofThing,
  kind: z.literal('receipt'),
  fluid: id.optional(),
  lot: z.string().optional(),
  litres: notNegative.optional(),
  /** The day it was made, as on the drum. */
  made: z.string().optional(),
  opened: z.string().optional(),
  seal: z.enum(['whole', 'broken']).optional(),
  /** What a litre of it cost; without it, what its fluid costs at that time. */
  pricePerLitre: notNegative.optional(),
})

export const issue = z.looseObject({
  ...ofThing,
  kind: z.literal('issue'),
  fluid: id.optional(),
  lot: z.string().optional(),
  litres: notNegative.optional(),
})

/** Waste put into a container. */
export const stored = z.looseObject({
  ...ofThing,
  kind: z.literal('stored'),
  stream: z.string().optional(),
  litres: notNegative.optional(),
  /** Where it was weighed and not measured. */
  kilograms: notNegative.optional(),
  /** The sump it came from. */
  from: id.optional(),
})

export const pickup = z.looseObject({
  ...ofThing,
  kind: z.literal('pickup'),
  stream: z.string().optional(),
  code: z.string().optional(),
  litres: notNegative.optional(),
  /** By the carrier's scales. */
  kilograms: notNegative.optional(),
  /** The number of the carrier's document. */
  document: z.string().optional(),
})

/** Words from one shift to the next. */
export const handover = z.looseObject({ ...ofThing, kind: z.literal('handover'), text: text.optional() })
