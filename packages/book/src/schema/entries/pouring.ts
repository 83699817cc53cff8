/** What goes into a sump and what comes out of it. */
import { z } from 'zod'
import { id, notNegative, percent, text } from '../values.ts'
import { ofSump } from './envelope.ts'

/** A fresh filling. The balance restarts here, heel included. */
export const charge = z.looseObject({
  ...ofSump,
  kind: z.literal('charge'),
  /** Litres poured. */
  volume: notNegative.optional(),
  /** Percent of what was poured. */
  strength: percent.optional(),
  water: id.optional(),
  fluid: id.optional(),
  lot: z.string().optional(),
  /** Litres of the old fluid that stayed. */
  heldBack: notNegative.optional(),
})

/** What was poured into a sump: mix, water (strength 0), concentrate alone, or an additive. */
export const addition = z.looseObject({
  ...ofSump,
  kind: z.literal('addition'),
  /** Litres of mix. */
  volume: notNegative.optional(),
  /** Filled to the mark, amount not measured. */
  toMark: z.boolean().optional(),
  strength: percent.optional(),
  water: id.optional(),
  fluid: id.optional(),
  lot: z.string().optional(),
  /** The difference to this meter's last count was poured. */
  meter: z.looseObject({ id, count: notNegative }).optional(),
  /** Litres of concentrate alone. */
  concentrate: notNegative.optional(),
  additive: z
    .looseObject({
      /** Of the shop's list of additives. */
      id: id.optional(),
      name: z.string().optional(),
      litres: notNegative.optional(),
      /** Of a powder. */
      grams: notNegative.optional(),
      reason: text.optional(),
      label: text.optional(),
    })
    .optional(),
})

/** Fluid taken out and away. */
export const drawoff = z.looseObject({ ...ofSump, kind: z.literal('drawoff'), volume: notNegative.optional() })

/** Fluid moved from this sump into another sump or a container. */
export const transfer = z.looseObject({
  ...ofSump,
  kind: z.literal('transfer'),
  volume: notNegative.optional(),
  to: z
    .union([id, z.strictObject({ sump: id }), z.strictObject({ container: id })], {
      error: "a sump's or container's id",
    })
    .optional(),
})

/** Tramp oil taken off the top. */
export const skim = z.looseObject({ ...ofSump, kind: z.literal('skim'), litres: notNegative.optional() })
