import { z } from 'zod'
import { type Fault, refusal } from '../../errors.ts'
import { faultsOf } from '../../schema/faults.ts'
import { id, name, percent } from '../../schema/values.ts'
import type { SheetMap } from '../sheet-types.ts'
import { sheetFields } from './fields.ts'

const field = z.enum(sheetFields as [string, ...string[]])
const unit = z.string().min(1).max(40)
const above0 = z.number().gt(0)

const newSump = z
  .strictObject({
    id: id.optional(),
    name: name.optional(),
    fluid: id.optional(),
    fillVolume: above0.nullable().optional(),
    capacity: above0.nullable().optional(),
    target: percent.nullable().optional(),
    low: percent.nullable().optional(),
    high: percent.nullable().optional(),
  })
  .meta({ description: 'A sump the book does not have; litres and percent. null: unknown, and left so.' })

/** Things as in a book file, judged with their own schemas when the sheet is read. A null is an accepted "unknown". */
const thing = z.looseObject({})

/** The answers of `--map`, as a person writes them. Fields it does not know are refused. */
export const sheetMap = z.strictObject({
  shape: z.enum(['long', 'wide']).optional(),
  dates: z.enum(['dmy', 'mdy', 'ymd']).optional(),
  decimal: z.enum([',', '.']).optional(),
  sheet: z.string().optional(),
  columns: z
    .record(
      z.string(),
      z.strictObject({ field: field.optional(), unit: unit.optional(), sump: z.string().min(1).optional() }).nullable(),
    )
    .optional(),
  values: z.strictObject({ field: field.optional(), unit: unit.optional() }).optional(),
  machines: z.record(z.string(), z.union([id, newSump], { error: "a sump's id, or what a new sump needs" })).optional(),
  newSumps: newSump.optional(),
  fluids: z.array(thing).optional(),
  waters: z.array(thing).optional(),
})

/**
 * A map from its JSON.
 *
 * @throws {BookError} `refused-input`, each fault with its pointer into the map
 */
export function readSheetMap(input: unknown): SheetMap {
  const parsed = sheetMap.safeParse(input)
  if (parsed.success) return parsed.data as SheetMap
  const faults: Fault[] = faultsOf(parsed.error, input)
  throw refusal(faults, 'map')
}
