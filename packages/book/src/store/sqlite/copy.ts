import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { BookError } from '../../errors.ts'

/**
 * Copies a book's file as it is, before its tables change: the version that wrote it opens the copy. The copy is checked and
 * on the disk before this returns; a copy of the same state of the tables is replaced.
 *
 * @throws {BookError} `store-out-of-reach` where there is no good copy: then nothing may be changed
 */
export async function copyBeforeUpgrade(path: string, done: readonly string[], folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const name = `${basename(path).replace(/\.(sqlite|db)$/, '')}.before-upgrade-from-${done.toSorted().at(-1)}.sqlite`
  const copy = join(folder, name)
  const part = `${copy}.part`
  rmSync(part, { force: true })
  const source = new DatabaseSync(path, { readOnly: true })
  try {
    source.prepare('vacuum into ?').run(part)
    if (contentOf(part) !== content(source)) {
      throw new BookError(
        'store-out-of-reach',
        `The copy of ${path} before its upgrade is not whole; nothing was changed.`,
      )
    }
    toDisk(part)
    renameSync(part, copy)
  } finally {
    source.close()
    rmSync(part, { force: true })
  }
}

function contentOf(file: string): string {
  const database = new DatabaseSync(file, { readOnly: true })
  try {
    return content(database)
  } finally {
    database.close()
  }
}

/** What two copies of one book have in common: soundness, how many rows of each table, and the head of the chain. */
function content(database: DatabaseSync): string {
  const tables = database.prepare("select name from sqlite_schema where type = 'table' order by name").all()
  const counts = tables.map(({ name }) => database.prepare(`select count(*) as n from "${String(name)}"`).get())
  return JSON.stringify([
    database.prepare('pragma integrity_check').all(),
    tables,
    counts,
    database.prepare('select seq, hash from head').all(),
  ])
}

function toDisk(file: string): void {
  const handle = openSync(file, 'r+')
  fsyncSync(handle)
  closeSync(handle)
}
