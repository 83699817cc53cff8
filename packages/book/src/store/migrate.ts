import type { Kysely } from 'kysely'
import { Migrator } from 'kysely/migration'
import { BookError } from '../errors.ts'
import { migrations } from './migrations/index.ts'
import { type StorePlace, sayPlace } from './place.ts'
import type { Tables } from './tables.ts'

/** How tables are brought up to date on one kind of database. */
export interface Upgrade {
  db: Kysely<Tables>
  /** The schema of the tables, where the database has such. */
  schema?: string
  /** The steps a book has had; none where there is no book yet. */
  stepsDone(): Promise<string[]>
  /** Says that there is no book yet, where there must be one. */
  refuseNew?: () => BookError
  /** Called before a book that is there already is changed. */
  keepCopy(done: readonly string[]): Promise<void>
}

/** There is no book where there must be one. */
export const noBook = (place: StorePlace): BookError =>
  new BookError('store-out-of-reach', `There is no book in ${sayPlace(place)}.`)

/**
 * Brings the tables up to date, all steps or none. A book that is up to date is only read, so that it opens while another
 * process writes.
 *
 * @throws {BookError} `newer-store` where a newer version made the book
 * @throws what the database says of a step that failed
 */
export async function migrate({ db, schema, stepsDone, refuseNew, keepCopy }: Upgrade): Promise<void> {
  const migrator = new Migrator({
    db,
    provider: migrations,
    ...(schema === undefined ? {} : { migrationTableSchema: schema }),
  })
  const steps = await migrator.getMigrations()
  const done = await stepsDone()
  const unknown = done.filter((name) => !steps.some((step) => step.name === name))
  if (unknown.length > 0) {
    throw new BookError(
      'newer-store',
      `This book was written by a newer version of Sumpbook (it has had the step ${unknown.join(', ')}): start that version.`,
    )
  }
  if (done.length === steps.length) return
  if (done.length > 0) await keepCopy(done)
  else if (refuseNew !== undefined) throw refuseNew()
  const { error } = await migrator.migrateToLatest()
  if (error !== undefined) throw error
}
