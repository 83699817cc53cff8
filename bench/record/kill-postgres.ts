// `node bench/record/kill-postgres.ts --times 50`: the database is killed under two servers' load; nothing may be lost.
import { startPostgres } from '../../tests/postgres/start.ts'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { killPostgresRun } from './kill-postgres-run.ts'

const database = await startPostgres()
try {
  const figures = await killPostgresRun(database, 'book', { times: timesAsked(50) })
  const { lost, doubled, faults } = figures
  keepFigures('kill PostgreSQL', { ...figures }, lost.length + doubled.length + faults.length === 0)
} finally {
  await database.stop()
}
