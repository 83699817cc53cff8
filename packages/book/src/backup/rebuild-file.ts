import { copyFileSync, existsSync, linkSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { BookError } from '../errors.ts'
import { openSqliteStore } from '../store/sqlite/open.ts'
import type { Store } from '../store/store.ts'
import { toDisk } from './to-disk.ts'

/** A book that is built beside a place and takes it when it is whole. */
export interface Rebuilding {
  /** Whether something lies at the place that must not be lost. */
  holdsBook(): Promise<boolean>
  build(fill: (store: Store) => Promise<void>): Promise<void>
  /**
   * Puts what was built in its place, in one step.
   *
   * @returns where what was there lies now; null where nothing was
   * @throws {BookError} `store-in-use`
   */
  takePlace(): Promise<string | null>
  /** Takes away what is left of the building. */
  clear(): Promise<void>
}

const endings = ['', '-wal', '-shm'] as const

/** A book's file, built anew beside the one that is there. */
export function rebuildFile(file: string): Rebuilding {
  const built = `${file}.restoring`
  const clear = async () => {
    for (const ending of endings) rmSync(built + ending, { force: true })
  }
  return {
    holdsBook: async () => existsSync(file) && !isEmptyBook(file),
    build: async (fill) => {
      await clear()
      const store = await openSqliteStore(built)
      try {
        await fill(store)
      } finally {
        await store.close()
      }
      // Alone with the file, SQLite puts the log into it and takes the log away.
      takeAlone(built)
      if (existsSync(`${built}-wal`)) throw new Error(`${built} still has a log beside it`)
    },
    takePlace: async () => {
      const there = existsSync(file)
      const empty = there && isEmptyBook(file)
      if (there) takeAlone(file)
      const aside = there && !empty ? keepAside(file) : null
      for (const ending of ['-wal', '-shm']) rmSync(file + ending, { force: true })
      renameSync(built, file)
      await toDisk(dirname(file))
      return aside
    },
    clear,
  }
}

/** What a book that was only served once has in it already. */
const ofNoBook = new Set(['head', 'person_code', 'person_secret', 'person_try'])

/** A file that cannot be read as a book is not empty: it may be what is left of one. */
function isEmptyBook(file: string): boolean {
  try {
    const database = new DatabaseSync(file, { readOnly: true })
    try {
      const tables = database.prepare("select name from sqlite_schema where type = 'table'").all()
      return tables
        .map(({ name }) => String(name))
        .filter((name) => !name.startsWith('kysely_') && !ofNoBook.has(name))
        .every((name) => database.prepare(`select 1 from "${name}" limit 1`).get() === undefined)
    } finally {
      database.close()
    }
  } catch {
    return false
  }
}

/**
 * Ends a file's write-ahead log, which only somebody who is alone with the file can do. A file that is no database any more is
 * nobody's.
 *
 * @throws {BookError} `store-in-use`
 */
function takeAlone(file: string): void {
  try {
    const database = new DatabaseSync(file, { timeout: 1000 })
    try {
      database.exec('pragma journal_mode = delete')
    } finally {
      database.close()
    }
  } catch (error) {
    if (/locked|busy/.test(String(error))) {
      throw new BookError('store-in-use', `${file} is open in another program: stop it first. Nothing was changed.`)
    }
  }
}

/** A second name for what is there, so that its place is never empty, not even for a moment. */
function keepAside(file: string): string {
  const folder = freeName(join(dirname(file), 'before-restore'))
  mkdirSync(folder)
  for (const ending of endings) {
    if (!existsSync(file + ending)) continue
    const kept = join(folder, basename(file) + ending)
    try {
      linkSync(file + ending, kept)
    } catch {
      // A disk without links.
      copyFileSync(file + ending, kept)
    }
  }
  return folder
}

function freeName(path: string): string {
  for (let n = 1; ; n++) {
    if (!existsSync(`${path}-${n}`)) return `${path}-${n}`
  }
}
