/** Where a book lies. */
export type StorePlace =
  /** In memory, gone with the process. */
  | { kind: 'memory' }
  /** In one SQLite file. */
  | { kind: 'file'; file: string }
  /** In one schema of a PostgreSQL database: several books share a database, each in its own schema. */
  | { kind: 'postgres'; url: string; schema: string }

/** The schema of a book whose place names none. */
export const defaultSchema = 'public'

/** A place for people and logs: never with a password. */
export function sayPlace(place: StorePlace): string {
  if (place.kind === 'memory') return 'memory'
  if (place.kind === 'file') return place.file
  const { hostname, port, pathname } = new URL(place.url)
  const host = `${hostname || 'localhost'}${port === '' ? '' : `:${port}`}`
  return `PostgreSQL at ${host}${pathname}, schema ${place.schema}`
}
