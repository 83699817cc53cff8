import {
  type ColumnDefinitionNode,
  type DatabaseIntrospector,
  type DataTypeNode,
  type Dialect,
  type Kysely,
  PostgresDialect,
  PostgresIntrospector,
  type PostgresPool,
  PostgresQueryCompiler,
  type QueryCompiler,
  sql,
  type TableMetadata,
} from 'kysely'
import pg from 'pg'
import { readable } from './errors.ts'

/** Kysely over a pool of connections; what goes wrong is said as the book says it. */
export class BookPostgresDialect extends PostgresDialect implements Dialect {
  readonly #schema: string

  constructor(pool: PostgresPool, schema: string) {
    super({ pool })
    this.#schema = schema
  }

  override createIntrospector<Whatever>(db: Kysely<Whatever>): DatabaseIntrospector {
    return new OwnSchema(db as unknown as Kysely<unknown>, this.#schema)
  }

  override createQueryCompiler(): QueryCompiler {
    return new ByteOrderedText()
  }
}

/**
 * Looks at the book's own schema alone. Kysely looks at all of the database's, and fails where one is dropped meanwhile, whoever's it is.
 */
class OwnSchema extends PostgresIntrospector {
  readonly #db: Kysely<unknown>
  readonly #schema: string

  constructor(db: Kysely<unknown>, schema: string) {
    super(db)
    this.#db = db
    this.#schema = schema
  }

  override async getTables(): Promise<TableMetadata[]> {
    const { rows } = await sql<{ name: string }>`
      select c.relname as name from pg_catalog.pg_class c join pg_catalog.pg_namespace n on n.oid = c.relnamespace
      where n.nspname = ${this.#schema} and c.relkind in ('r', 'p')`.execute(this.#db)
    return rows.map(({ name }) => ({ name, schema: this.#schema, isView: false, isForeign: false, columns: [] }))
  }
}

/**
 * Every column of text is made with the order of its bytes, as SQLite has it: by a server's own order, which follows the rules
 * of some language, one moment's entries would stand otherwise than in the same book elsewhere.
 */
class ByteOrderedText extends PostgresQueryCompiler {
  protected override visitDataType(node: DataTypeNode): void {
    super.visitDataType(node)
    const column = this.parentNode as ColumnDefinitionNode | undefined
    if (node.dataType === 'text' && column?.kind === 'ColumnDefinitionNode') this.append(' collate "C"')
  }
}

/** Connections a program holds at most: a server takes a hundred unless told otherwise. */
const connectionsAtMost = 10
const patienceMs = 10_000

/** A pool whose errors are the book's. */
export function bookPool(url: string): PostgresPool {
  const pool = new pg.Pool({
    connectionString: url,
    max: connectionsAtMost,
    connectionTimeoutMillis: patienceMs,
    keepAlive: true,
    application_name: 'sumpbook',
    types: numbersAsNumbers,
  })
  // A connection that breaks while nobody uses it leaves the pool; who needs one next gets a new one or is told.
  pool.on('error', () => {})
  return {
    connect: async () => {
      const client = await said(() => pool.connect())
      // Also while somebody has it: the statement under way fails and says so.
      client.on('error', ignore)
      return {
        query: ((statement: string, values: unknown[]) => said(() => client.query(statement, values))) as never,
        release: (broken?: boolean) => {
          client.off('error', ignore)
          client.release(broken)
        },
      }
    },
    end: () => pool.end(),
    options: pool.options,
    Client: pg.Client,
  } as unknown as PostgresPool
}

const ignore = () => {}

async function said<T>(ask: () => Promise<T>): Promise<T> {
  try {
    return await ask()
  } catch (error) {
    throw readable(error)
  }
}

/** Counts are 64 bits wide on the server and never so large here. */
const int8 = 20
const numbersAsNumbers = {
  getTypeParser: ((oid: number, format: 'text') =>
    oid === int8 ? Number : pg.types.getTypeParser(oid, format)) as typeof pg.types.getTypeParser,
}
