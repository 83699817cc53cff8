import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'

/** What is rare in a journal (a sign-off, a verdict, a note to the next shift) is found without walking all readings. */
export async function up(db: Kysely<Tables>): Promise<void> {
  await db.schema.createIndex('entry_by_kind').on('entry').columns(['kind', 'at', 'rank', 'id']).execute()
}
