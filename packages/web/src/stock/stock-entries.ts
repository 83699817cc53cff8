import type { Entry } from '../api/types.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import { instantOf } from '../water/analyses.ts'
import type { SmallValues } from './form-fields.ts'

/** What a form about stock or waste is about, and on which day it is filled in. */
export interface Subject {
  about: { kind: 'stock' | 'waste'; id: string }
  today: string
}

/** Fields that say something, without those that do not. */
const told = (fields: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null && value !== undefined))

/** An entry about stock or waste, of the day that the form names. */
export function subjectEntry(
  kind: 'receipt' | 'issue' | 'order' | 'check' | 'stored' | 'pickup',
  { about, today }: Subject,
  fields: Record<string, unknown>,
  { texts, typed }: Pick<SmallValues, 'texts' | 'typed'>,
  stamp: Stamp,
): Entry {
  const on = texts.on ?? null
  return {
    ...envelope(stamp),
    ...(on === null ? {} : { at: instantOf(on, today, stamp.at) }),
    kind,
    about,
    ...told(fields),
    ...(Object.keys(typed).length === 0 ? {} : { typed: { ...typed } }),
    ...told({ note: texts.note }),
  } as Entry
}

/** Drums of one size in litres; null where nobody said how many. */
export const drumsOf = ({ numbers }: SmallValues): number | null =>
  numbers.drums == null || numbers.size == null ? null : numbers.drums * numbers.size

/** What a count found: full drums and what is left in open ones. */
export const countedOf = ({ numbers }: SmallValues): number | null => {
  if (numbers.drums == null && numbers.rest == null) return null
  return (numbers.drums ?? 0) * (numbers.size ?? 0) + (numbers.rest ?? 0)
}

/** A thing of the shop, new or changed. */
export function thingEntry(
  about: { kind: 'fluid' | 'waste'; id: string },
  changes: Record<string, unknown>,
  was: Record<string, unknown> | null,
  stamp: Stamp,
): Entry {
  return { ...envelope(stamp), kind: 'setup', about, changes, ...(was === null ? {} : { was }) } as Entry
}
