import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'

/** A place for what follows from the journal and may be thrown away. */
export async function up(db: Kysely<Tables>): Promise<void> {
  await db.schema
    .createTable('projection')
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('day', 'integer', (column) => column.notNull())
    .addColumn('key', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('projection_key', ['name', 'day'])
    .execute()
}
