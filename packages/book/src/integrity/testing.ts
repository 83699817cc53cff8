import { copyFileSync, rmSync } from 'node:fs'
import { DatabaseSync } from 'node:sqlite'

/**
 * Changes copies of a book's file as somebody with a database tool would, one change a copy: for tests of `verify`. A change
 * leaves the tables' own rules whole and differs from what was there.
 */
export async function tamperings(
  file: string,
  { times, seed }: { times: number; seed: number },
  look: (copy: string, change: string) => Promise<void>,
): Promise<void> {
  const pick = chance(seed)
  for (let n = 0; n < times; n++) {
    const copy = `${file}.tampered.sqlite`
    copyFileSync(file, copy)
    const database = new DatabaseSync(copy)
    let change: string | null = null
    while (change === null) change = attempt(database, pick)
    database.close()
    await look(copy, change)
    for (const ending of ['', '-wal', '-shm']) rmSync(copy + ending, { force: true })
  }
}

type Pick = (below: number) => number

/** Whole numbers from 0 on, below a bound: a small generator (mulberry32), the same for the same seed. */
function chance(seed: number): Pick {
  let state = seed
  return (below) => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below)
  }
}

const tables = ['entry', 'entry', 'entry', 'thing', 'meta', 'head'] as const

/** One change by chance; null where the tables refuse it or it changes nothing. */
function attempt(database: DatabaseSync, pick: Pick): string | null {
  const table = tables[pick(tables.length)]!
  const rows = database.prepare(`select rowid as place, * from ${table} order by rowid`).all()
  const row = rows[pick(rows.length)]!
  const columns = Object.keys(row).filter((column) => column !== 'place')
  const column = columns[pick(columns.length)]!
  const before = content(database)
  const [what, statement, values] = changes(table, { rows, row, column, pick })
  try {
    database.prepare(statement).run(...values)
  } catch {
    return null
  }
  return content(database) === before ? null : `${table}.${column} of row ${row.place}: ${what}`
}

type Row = Record<string, string | number | bigint | null | Uint8Array>

function changes(
  table: string,
  { rows, row, column, pick }: { rows: Row[]; row: Row; column: string; pick: Pick },
): [string, string, (string | number | bigint | null | Uint8Array)[]] {
  const place = row.place!
  const set = `update ${table} set ${column} = ? where rowid = ?`
  const other = rows[pick(rows.length)]!
  switch (pick(6)) {
    case 0:
      return ['deleted', `delete from ${table} where rowid = ?`, [place]]
    case 1:
      return ['from another row', set, [other[column]!, place]]
    case 2:
      return ['null', set, [null, place]]
    case 3:
      return ['cut short', set, [typeof row[column] === 'string' ? row[column].slice(0, -1) : 0, place]]
    case 4: {
      const names = Object.keys(row).filter((name) => name !== 'place')
      const values = names.map((name) => (name === 'seq' || name === 'id' ? altered(row[name]!, pick) : row[name]!))
      return [
        'copied',
        `insert into ${table} (${names.join(', ')}) values (${names.map(() => '?').join(', ')})`,
        values,
      ]
    }
    default:
      return ['altered', set, [altered(row[column]!, pick), place]]
  }
}

/** A text with one character changed, a number with one more. */
function altered(value: string | number | bigint | null | Uint8Array, pick: Pick): string | number {
  if (typeof value === 'number') return value + 1 + pick(3)
  if (typeof value !== 'string' || value === '') return 'x'
  const at = pick(value.length)
  const letter = String.fromCharCode(value.charCodeAt(at) ^ (1 << pick(3)))
  return value.slice(0, at) + letter + value.slice(at + 1)
}

const content = (database: DatabaseSync) =>
  JSON.stringify(['entry', 'thing', 'meta', 'head'].map((table) => database.prepare(`select * from ${table}`).all()))
