import type { Units } from '../api/types.ts'
import { fieldPercent, fieldVolume } from '../say/units.ts'
import { type DipTable, dipsText, padsText } from './list-fields.ts'
import type { Texts, ThingField } from './thing-field.ts'
import { valueAt } from './value-at.ts'

/** A thing as texts, in the shop's units. */
export function textsOf(thing: Readonly<Record<string, unknown>>, fields: readonly ThingField[], units: Units): Texts {
  return Object.fromEntries(fields.map((field) => [field.path, textOf(valueAt(thing, field.path), field, units)]))
}

/** What a field shows of a value; empty where nothing is known. */
export function textOf(value: unknown, { kind }: ThingField, units: Units): string {
  if (value === undefined || value === null) return ''
  if (kind === 'pads') return padsText(value as number[])
  if (kind === 'dips') return dipsText(value as DipTable, units)
  if (typeof value !== 'number') return String(value)
  if (kind === 'volume') return fieldVolume(value, units)
  return kind === 'percent' ? fieldPercent(value) : String(value)
}
