import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'

/** What was entered about a thing of the shop (a water's analyses, a mixer's checks) is found without walking all readings. */
export async function up(db: Kysely<Tables>): Promise<void> {
  await db.schema
    .createIndex('entry_about')
    .on('entry')
    .columns(['about_kind', 'about_id', 'at', 'rank', 'id'])
    .where('about_kind', 'is not', null)
    .execute()
}
