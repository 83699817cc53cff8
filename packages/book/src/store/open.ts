import type { StorePlace } from './place.ts'
import { inMemory, openSqliteStore } from './sqlite/open.ts'
import type { OpenOptions, Store } from './store.ts'

/**
 * Opens the book at a place, making it where there is none, and brings its tables up to date.
 *
 * @throws {BookError} `store-out-of-reach`, `newer-store`
 */
export async function openStore(place: StorePlace, options: OpenOptions = {}): Promise<Store> {
  if (place.kind === 'memory') return openSqliteStore(inMemory, options)
  if (place.kind === 'file') return openSqliteStore(place.file, options)
  // The driver is loaded only by who uses it: a book in a file opens without.
  const { openPostgresStore } = await import('./postgres/open.ts')
  return openPostgresStore(place, options)
}
