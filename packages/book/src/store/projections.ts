import type { Kysely } from 'kysely'
import type { Tables } from './tables.ts'

/** Something worked out from the journal, kept so that it need not be worked out again; may be thrown away at any time. */
export interface StoredProjection {
  /** What it was worked out by; under another key it is worth nothing. */
  key: string
  /** Its place among those of its name. */
  day: number
  body: string
}

/** What is kept under a name, by day. */
export async function projectionsOf(db: Kysely<Tables>, name: string): Promise<StoredProjection[]> {
  return db.selectFrom('projection').select(['key', 'day', 'body']).where('name', '=', name).orderBy('day').execute()
}

/** Keeps these under a name, and nothing else. */
export async function keepProjections(
  db: Kysely<Tables>,
  name: string,
  projections: readonly StoredProjection[],
): Promise<void> {
  await db.deleteFrom('projection').where('name', '=', name).execute()
  for (const projection of projections) {
    await db
      .insertInto('projection')
      .values({ name, ...projection })
      .execute()
  }
}
