/** What was given, without the fields that were not: `exactOptionalPropertyTypes` tells the two apart. */
export function given<T extends object>(input: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined)) as never
}
