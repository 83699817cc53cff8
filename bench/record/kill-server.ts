// `node bench/record/kill-server.ts --times 1000`: the server is killed under load, on a file and on a database; nothing may be lost.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startPostgres } from '../../tests/postgres/start.ts'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { type KillFigures, killServerRun } from './kill-server-run.ts'

const times = timesAsked(1000)
const good = ({ lost, doubled, faults }: KillFigures) => lost.length + doubled.length + faults.length === 0

const folder = mkdtempSync(join(tmpdir(), 'sumpbook-kill-'))
const database = await startPostgres()
try {
  const onFile = await killServerRun({ kind: 'file', file: join(folder, 'book.sqlite') }, { times })
  keepFigures('kill the server, SQLite', { ...onFile }, good(onFile))
  const fewer = Math.ceil(times / 10)
  const onDatabase = await killServerRun({ kind: 'postgres', url: database.url, schema: 'book' }, { times: fewer })
  keepFigures('kill the server, PostgreSQL', { ...onDatabase }, good(onFile) && good(onDatabase))
} finally {
  await database.stop()
  rmSync(folder, { recursive: true, force: true })
}
