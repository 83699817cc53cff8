import { z } from 'zod'
import { id, name, notNegative, text } from '../values.ts'

/** How a label writes an amount of product in the mix. */
const labelUnit = z.enum(['mL/L', '%', 'g/L', 'mg/L', 'L/1000 L', 'fl oz/gal'])
const days = z.number().gt(0).max(3660)

/** Something that goes into a mix beside concentrate and water, with what its label allows as somebody of the shop typed it. */
export const additive = z
  .looseObject({
    id,
    name,
    kind: z.enum(['biocide', 'fungicide', 'ph', 'defoamer', 'corrosion', 'other']),
    /** One dose, of the product as delivered, in the unit the label writes. */
    dose: z.looseObject({ low: notNegative, high: z.number().gt(0), unit: labelUnit }).optional(),
    /** Days between two doses. */
    minimumDays: days.optional(),
    /** All doses of so many days together, in the unit of `dose`. */
    most: z.looseObject({ amount: z.number().gt(0), days }).optional(),
    /** Which label, of when, where on it. */
    label: text.optional(),
    /** What it brings that other fluids must not meet: "nitrite", "amines". */
    contains: z.array(z.string()).optional(),
    /** The least role that gives it. */
    who: z.enum(['keeper', 'owner']).optional(),
  })
  .refine(({ dose }) => dose === undefined || dose.low <= dose.high, {
    error: 'the most of a dose not below its least',
    path: ['dose', 'high'],
  })
  .refine(({ dose, most }) => dose === undefined || most === undefined || most.amount >= dose.high, {
    error: 'not less than one dose',
    path: ['most', 'amount'],
  })

export type Additive = z.infer<typeof additive>
