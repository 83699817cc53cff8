import {
  type ColumnDefinitionNode,
  type DataTypeNode,
  type Dialect,
  PostgresDialect,
  type PostgresPool,
  PostgresQueryCompiler,
  type QueryCompiler,
} from 'kysely'
import pg from 'pg'
import { readable } from './errors.ts'

/** Kysely over a pool of connections; what goes wrong is said as the book says it. */
export class BookPostgresDialect extends PostgresDialect implements Dialect {
  constructor(pool: PostgresPool) {
    super({ pool })
  }

  override createQueryCompiler(): QueryCompiler {
    return new ByteOrderedText()
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
