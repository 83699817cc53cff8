import { setAt } from './value-at.ts'

/** A new thing's fields as a book keeps them: nested, and nothing that is not known. */
export function thingFrom(values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const thing: Record<string, unknown> = {}
  for (const [path, value] of Object.entries(values)) if (value !== null) setAt(thing, path.split('.'), value)
  return thing
}
