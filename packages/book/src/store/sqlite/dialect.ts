import type { DatabaseSync, SQLInputValue, StatementSync } from 'node:sqlite'
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely'
import { readable } from './errors.ts'

/** Kysely over Node's own SQLite: one connection, one user of it at a time, in order of asking. */
export function sqliteDialect(database: DatabaseSync): Dialect {
  return {
    createAdapter: () => new TransactionalTables(),
    createDriver: () => new OneConnection(database),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  }
}

/** SQLite makes and changes tables inside transactions: an upgrade is done whole or not at all. */
class TransactionalTables extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}

class OneConnection implements Driver {
  readonly #connection: Connection
  #free: Promise<void> = Promise.resolve()
  #release: () => void = () => {}

  constructor(database: DatabaseSync) {
    this.#connection = new Connection(database)
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<DatabaseConnection> {
    const before = this.#free
    const { promise, resolve } = Promise.withResolvers<void>()
    this.#free = promise
    await before
    this.#release = resolve
    return this.#connection
  }

  async releaseConnection(): Promise<void> {
    this.#release()
  }

  /** IMMEDIATE: a transaction that reads first and writes later would meet "database is locked" beside another process. */
  async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'))
  }

  async commitTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('commit'))
  }

  /** A full disk ends a transaction by itself: there is nothing left to roll back then. */
  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#connection.inTransaction) await connection.executeQuery(CompiledQuery.raw('rollback'))
  }

  async destroy(): Promise<void> {
    this.#connection.close()
  }
}

interface Prepared {
  statement: StatementSync
  givesRows: boolean
}

/** Statements are prepared once and kept, up to this many. */
const keptStatements = 200

class Connection implements DatabaseConnection {
  readonly #database: DatabaseSync
  readonly #statements = new Map<string, Prepared>()

  constructor(database: DatabaseSync) {
    this.#database = database
  }

  get inTransaction(): boolean {
    return this.#database.isTransaction
  }

  async executeQuery<R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> {
    const values = parameters.map(bindable)
    try {
      const { statement, givesRows } = this.#prepare(sql)
      if (givesRows) return { rows: statement.all(...values) as R[] }
      const { changes, lastInsertRowid } = statement.run(...values)
      return { rows: [], numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid) }
    } catch (error) {
      throw readable(error)
    }
  }

  async *streamQuery<R>({ sql, parameters }: CompiledQuery): AsyncGenerator<QueryResult<R>> {
    for (const row of this.#database.prepare(sql).iterate(...parameters.map(bindable))) yield { rows: [row as R] }
  }

  close(): void {
    this.#statements.clear()
    this.#database.close()
  }

  #prepare(sql: string): Prepared {
    const kept = this.#statements.get(sql)
    if (kept !== undefined) return kept
    const statement = this.#database.prepare(sql)
    const prepared = { statement, givesRows: statement.columns().length > 0 }
    if (this.#statements.size >= keptStatements) this.#statements.clear()
    this.#statements.set(sql, prepared)
    return prepared
  }
}

/** node:sqlite binds a Date or NaN as NULL without a word: only what it binds faithfully goes in. */
function bindable(value: unknown): SQLInputValue {
  if (value === null || typeof value === 'string' || typeof value === 'bigint' || value instanceof Uint8Array)
    return value
  if (typeof value === 'number' && Number.isFinite(value)) return value
  throw new RangeError(`a value that SQLite cannot hold: ${String(value)}`)
}
