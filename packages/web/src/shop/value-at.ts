/** What stands in a thing at the end of a path, joined by dots; undefined where it leads nowhere. */
export const valueAt = (thing: Readonly<Record<string, unknown>>, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], thing)

/** Puts a value there; objects on the way are copied or made. */
export function setAt(thing: Record<string, unknown>, [key, ...rest]: string[], value: unknown): void {
  if (rest.length === 0) {
    thing[key!] = value
    return
  }
  const inner = { ...(thing[key!] as Record<string, unknown> | undefined) }
  setAt(inner, rest, value)
  thing[key!] = inner
}
