import { type Kysely, sql } from 'kysely'
import type { StorePlace } from '../store/place.ts'
import { connectTo, openPostgresStore } from '../store/postgres/open.ts'
import type { Tables } from '../store/tables.ts'
import type { Rebuilding } from './rebuild-file.ts'

type PostgresPlace = Extract<StorePlace, { kind: 'postgres' }>

/** Longest name the server keeps; what is added to a schema's name must fit as well. */
const longestName = 63
const named = (schema: string, ending: string) => schema.slice(0, longestName - ending.length) + ending

/** A book's tables, built in a schema of their own and put in place of those that are there in one transaction. */
export function rebuildSchema(place: PostgresPlace): Rebuilding {
  const { schema } = place
  const built = named(schema, '_restoring')
  const alone = async <T>(work: (db: Kysely<Tables>) => Promise<T>) => {
    const db = connectTo(place)
    try {
      return await work(db)
    } finally {
      await db.destroy()
    }
  }
  const clear = () => alone(async (db) => void (await sql`drop schema if exists ${sql.id(built)} cascade`.execute(db)))
  return {
    holdsBook: () => alone((db) => holdsBook(db, schema)),
    build: async (fill) => {
      await clear()
      const store = await openPostgresStore({ ...place, schema: built })
      try {
        await fill(store)
      } finally {
        await store.close()
      }
    },
    takePlace: () =>
      alone(async (db) => {
        const held = await holdsBook(db, schema)
        const aside = await freeSchema(db, schema)
        await db.transaction().execute(async (transaction) => {
          await sql`create schema if not exists ${sql.id(schema)}`.execute(transaction)
          await sql`create schema ${sql.id(aside)}`.execute(transaction)
          const coming = await tablesOf(transaction, built)
          const there = (await tablesOf(transaction, schema)).filter((table) => coming.includes(table))
          for (const table of there) await moveTable(transaction, { table, from: schema, to: aside })
          for (const table of coming) await moveTable(transaction, { table, from: built, to: schema })
          if (!held) await sql`drop schema ${sql.id(aside)} cascade`.execute(transaction)
        })
        return held ? `schema ${aside}` : null
      }),
    clear,
  }
}

async function holdsBook(db: Kysely<Tables>, schema: string): Promise<boolean> {
  const tables = (await tablesOf(db, schema)).filter((table) =>
    ['entry', 'thing', 'meta', 'person', 'held'].includes(table),
  )
  for (const table of tables) {
    const { rows } = await sql`select 1 from ${sql.table(`${schema}.${table}`)} limit 1`.execute(db)
    if (rows.length > 0) return true
  }
  return false
}

async function tablesOf(db: Kysely<Tables>, schema: string): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`
    select c.relname as name from pg_class c join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = ${schema} and c.relkind = 'r' order by c.relname`.execute(db)
  return rows.map(({ name }) => name)
}

async function freeSchema(db: Kysely<Tables>, schema: string): Promise<string> {
  for (let n = 1; ; n++) {
    const name = named(schema, `_before_restore_${n}`)
    const { rows } = await sql`select 1 from pg_namespace where nspname = ${name}`.execute(db)
    if (rows.length === 0) return name
  }
}

const moveTable = (db: Kysely<Tables>, { table, from, to }: { table: string; from: string; to: string }) =>
  sql`alter table ${sql.table(`${from}.${table}`)} set schema ${sql.id(to)}`.execute(db)
