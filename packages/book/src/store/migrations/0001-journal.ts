import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'

/** The journal, the things, and the head of the chain. */
export async function up(db: Kysely<Tables>): Promise<void> {
  await db.schema
    .createTable('meta')
    .addColumn('key', 'text', (column) => column.primaryKey())
    .addColumn('value', 'text', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('thing')
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('position', 'integer', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('thing_key', ['kind', 'id'])
    .execute()
  await db.schema
    .createTable('entry')
    .addColumn('seq', 'integer', (column) => column.primaryKey())
    .addColumn('id', 'text', (column) => column.notNull().unique())
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('rank', 'integer', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('governs', 'text')
    .addColumn('sump', 'text')
    .addColumn('about_kind', 'text')
    .addColumn('about_id', 'text')
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('received_at', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('entry_by_sump').on('entry').columns(['sump', 'at', 'rank', 'id']).execute()
  await db.schema.createIndex('entry_by_time').on('entry').columns(['at', 'rank', 'id']).execute()
  await db.schema
    .createIndex('entry_that_governs')
    .on('entry')
    .columns(['governs', 'at'])
    .where('governs', 'is not', null)
    .execute()
  await db.schema
    .createTable('head')
    .addColumn('one', 'integer', (column) => column.primaryKey())
    .addColumn('seq', 'integer', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('setup_seq', 'integer', (column) => column.notNull())
    .execute()
}
