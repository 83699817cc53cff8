import {
  type CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type Kysely,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely'
import type { Tables } from '../tables.ts'
import { untilFree } from '../until-free.ts'
import { isBusy } from './errors.ts'

interface Connections {
  reader: Kysely<Tables>
  writer: Kysely<Tables>
}

/**
 * Single statements for who knows nothing of readers and writers: questions go to the reader, so that nobody waits for an
 * import to be recognised; the rest waits its turn at the writer, and for another process. No transactions.
 */
export function patientDialect(connections: Connections): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new TurnTaking(connections),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  }
}

class TurnTaking implements Driver {
  readonly #connection: DatabaseConnection

  constructor({ reader, writer }: Connections) {
    this.#connection = {
      executeQuery: async <R>(query: CompiledQuery): Promise<QueryResult<R>> => {
        if (query.query.kind === 'SelectQueryNode') return (await reader.executeQuery(query)) as QueryResult<R>
        return (await untilFree(() => writer.executeQuery(query), isBusy)) as QueryResult<R>
      },
      // biome-ignore lint/correctness/useYield: nothing is streamed.
      async *streamQuery(): AsyncGenerator<never> {
        throw new RangeError('a table of people is never streamed')
      },
    }
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    return this.#connection
  }

  async releaseConnection(): Promise<void> {}

  async beginTransaction(): Promise<void> {
    throw new RangeError('a transaction over the tables of people: each statement must stand by itself')
  }

  async commitTransaction(): Promise<void> {}

  async rollbackTransaction(): Promise<void> {}

  async destroy(): Promise<void> {}
}
