import { z } from 'zod'
import { brix, day, id, name, notNegative, percent, risingPairs } from '../values.ts'
import { limits } from './limits.ts'

/** Percent per °Brix: products run from about 0.8 to 4; 20 is far outside every one of them. */
export const brixFactor = z.number().gt(0).max(20)

/** How the concentrate is bought and kept; what is missing is assumed, and said to be. */
const stockKept = z.looseObject({
  /** Litres of a drum or can. */
  packSize: z.number().gt(0).optional(),
  /** From order to delivery. */
  leadDays: notNegative.optional(),
  leadSd: notNegative.optional(),
  /** Money that one order costs, whatever its size. */
  orderCost: notNegative.optional(),
  /** What a year in store costs, percent of the price. */
  holdingPercent: notNegative.optional(),
  /** Chance in percent of not running out while a delivery is awaited. */
  service: z.number().min(50).lt(100).optional(),
  /** Days an opened drum keeps. */
  openedDays: notNegative.optional(),
  /** What counts as used: drums issued to the floor, or pours; without it issues where there are any. */
  usedBy: z.enum(['issues', 'pours']).optional(),
})

/** A water-mixed coolant (or a straight oil, which is never mixed) as the shop uses it. */
export const fluid = z.looseObject({
  id,
  name,
  class: z.enum(['soluble-oil', 'semi-synthetic', 'synthetic', 'straight-oil']).optional(),
  brixFactor: brixFactor.optional(),
  /** A product chart; wins over the factor. */
  brixChart: risingPairs(brix, percent).optional(),
  /** Dated or per lot; a reading keeps the one of its time. */
  factors: z.array(z.looseObject({ from: day.optional(), lot: z.string().optional(), brixFactor })).optional(),
  titration: z
    .looseObject({
      factor: z.number().gt(0).optional(),
      per: z.enum(['mL', 'drop']).optional(),
      sample: z.number().gt(0).optional(),
    })
    .optional(),
  /** The leanest mix the fluid's sheet allows as a top-up. */
  minTopUp: percent.optional(),
  /** The strongest mix that is poured. */
  maxMixStrength: z.number().gt(0).max(100).optional(),
  /** Whether the fluid's sheet allows neat concentrate in a sump. */
  neatAllowed: z.boolean().optional(),
  /** What its safety data sheet names that other fluids must not meet: "nitrite", "amines". */
  contains: z.array(z.string()).optional(),
  unsuitedMetals: z.array(z.string()).optional(),
  limits: limits.optional(),
  pricePerLitre: notNegative.optional(),
  /** Of an unopened drum, from the day it was made. */
  shelfLifeDays: notNegative.optional(),
  stock: stockKept.optional(),
  /** Kilograms a litre, of the concentrate. */
  density: z.number().gt(0).optional(),
})

export type Fluid = z.infer<typeof fluid>
