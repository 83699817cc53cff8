// `node bench/record/postgres-put.ts`: durable entries a second into PostgreSQL with the chain, through one server and through two.
import { startPostgres } from '../../tests/postgres/start.ts'
import { digits, median } from '../machine.ts'
import { perSecond, reading } from '../put-load.ts'
import { keepFigures } from './keep-figures.ts'
import { argsOf } from './kill-server-run.ts'
import { startServer } from './server-process.ts'

const singles = 2000
const batches = 24
const entriesABatch = 500
let run = 0

const singlesFor = (address: string) => {
  run += 1
  return Array.from({ length: singles }, (_, n) => {
    const entry = reading(n, run)
    return { url: `${address}/api/v1/entries/${entry.id}`, body: JSON.stringify(entry) }
  })
}
const batchesFor = (address: string) => {
  run += 1
  return Array.from({ length: batches }, (_, batch) => {
    const entries = Array.from({ length: entriesABatch }, (_, n) => reading(batch * entriesABatch + n, run))
    return { url: `${address}/api/v1/entries`, body: JSON.stringify({ entries }) }
  })
}
const thrice = async (measure: () => Promise<number>) => {
  await measure()
  return digits(median([await measure(), await measure(), await measure()]))
}

const database = await startPostgres()
const place = { kind: 'postgres', url: database.url, schema: 'book' } as const
const servers = [await startServer(argsOf(place)), await startServer(argsOf(place))]
try {
  const [one, other] = servers.map(({ address }) => address) as [string, string]
  const overOneConnection = await thrice(() => perSecond(singlesFor(one), 1))
  const over8Connections = await thrice(() => perSecond(singlesFor(one), 8))
  const twoServers8Connections = await thrice(async () => {
    const [a, b] = await Promise.all([perSecond(singlesFor(one), 4), perSecond(singlesFor(other), 4)])
    return a + b
  })
  const batched = await thrice(async () => entriesABatch * (await perSecond(batchesFor(one), 2)))
  const figures = {
    overOneConnection,
    over8Connections,
    twoServers8Connections,
    limitSingle: 400,
    batchedEntriesPerSecond: batched,
    limitBatched: 4000,
  }
  keepFigures('entries a second, PostgreSQL', figures, over8Connections >= 400 && batched >= 4000)
} finally {
  await Promise.all(servers.map((server) => server.stop()))
  await database.stop()
}
