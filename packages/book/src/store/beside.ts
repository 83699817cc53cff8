import { type Kysely, PostgresAdapter } from 'kysely'
import type { Tables } from './tables.ts'

/** A row of what lies beside the journal and belongs to the book: its people, their devices, what waits for a keeper. */
export interface BesideRow {
  table: string
  row: Record<string, string | number | boolean | null>
}

/** In the order in which they can be filled. Sessions, codes and counts of tries end with the place they were made at. */
const carried = [
  ['person', ['id']],
  ['person_account', ['id']],
  ['person_two_factor', ['id']],
  ['person_token', ['id']],
  ['person_switch', ['token', 'person', 'at']],
  ['person_secret', ['name']],
  ['held', ['id']],
] as const

/** Columns that are true or false; SQLite keeps them as 1 and 0. */
const booleans = new Set(['emailVerified', 'twoFactorEnabled', 'verified'])

/** What lies beside the journal, the same on every database. */
export async function besideOf(db: Kysely<Tables>): Promise<BesideRow[]> {
  const rows: BesideRow[] = []
  if (!(await hasPeople(db))) return rows
  for (const [table, key] of carried) {
    let select = db.selectFrom(table as 'person').selectAll()
    for (const column of key) select = select.orderBy(column as 'id')
    for (const row of await select.execute()) rows.push({ table, row: plain(row) })
  }
  return rows
}

/** Before an upgrade a book is copied as it is: an older one has no such tables. */
async function hasPeople(db: Kysely<Tables>): Promise<boolean> {
  const steps = (db as unknown as Kysely<{ kysely_migration: { name: string } }>).selectFrom('kysely_migration')
  return (await steps.select('name').where('name', '=', '0005-people').executeTakeFirst()) !== undefined
}

/**
 * Puts such rows into tables that are empty.
 *
 * @throws {RangeError} a table that is not carried
 */
export async function addBeside(db: Kysely<Tables>, rows: readonly BesideRow[]): Promise<void> {
  const asNumbers = !(db.getExecutor().adapter instanceof PostgresAdapter)
  for (const { table, row } of rows) {
    if (!carried.some(([known]) => known === table)) throw new RangeError(`no table beside the journal: ${table}`)
    const values = Object.fromEntries(
      Object.entries(row).map(([column, value]) => [
        column,
        asNumbers && typeof value === 'boolean' ? Number(value) : value,
      ]),
    )
    await db
      .insertInto(table as 'person')
      .values(values as never)
      .execute()
  }
}

function plain(row: object): BesideRow['row'] {
  return Object.fromEntries(
    Object.entries(row).map(([column, value]) => {
      if (value instanceof Date) return [column, value.toISOString()]
      if (booleans.has(column) && typeof value === 'number') return [column, value === 1]
      return [column, value as string | number | boolean | null]
    }),
  )
}
