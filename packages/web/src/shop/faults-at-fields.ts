import { say } from '@sumpbook/fluid'
import type { Fault } from '../fields/read.ts'
import type { ThingField } from './thing-field.ts'

/** The faults of problem details about a set-up entry, at the form's fields; `rest` has no field here. */
export function faultsAtFields(
  errors: readonly { pointer: string; found: string; expected: string }[],
  fields: readonly ThingField[],
) {
  const at: Record<string, Fault> = {}
  const rest: string[] = []
  for (const { pointer, found, expected } of errors) {
    const path = pointer.replace(/^\/changes\//, '').replaceAll('/', '.')
    if (fields.some((field) => field.path === path)) at[path] = { found, expected }
    else rest.push(say('{pointer}: found {found}, expected {expected}', { pointer, found, expected }))
  }
  return { at, rest }
}
