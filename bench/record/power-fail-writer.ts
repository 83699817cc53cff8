// A program to be recorded: writes entries into a new book, one durable transaction each, and says "ack N" after each.
import { writeSync } from 'node:fs'
import { sql } from 'kysely'
import { arriving } from '../../packages/book/src/journal/arriving.ts'
import { connect, openSqliteStore, storeOf } from '../../packages/book/src/store/sqlite/open.ts'

const [path = '', entries = '0', synchronous = 'full'] = process.argv.slice(2)
await (await openSqliteStore(path)).close()
const [writer, reader] = [await connect(path), await connect(path)]
// The book itself never does this: it is the control.
if (synchronous === 'normal') await sql`pragma synchronous = normal`.execute(writer)
// So that the log is put into the file often enough to be met in the middle of that.
await sql`pragma wal_autocheckpoint = 60`.execute(writer)
const store = storeOf({ path, reader, writer })
for (let n = 1; n <= Number(entries); n++) {
  const entry = {
    id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
    at: new Date(Date.parse('2026-03-03T08:00:00Z') + n * 1000).toISOString(),
    kind: 'reading',
    sump: `s${n % 7}`,
    brix: 4 + (n % 20) / 10,
    note: 'words '.repeat(n % 300),
  }
  await store.write((journal) => journal.append([arriving(entry)], entry.at))
  writeSync(1, `ack ${n}\n`)
}
process.kill(process.pid, 'SIGKILL')
