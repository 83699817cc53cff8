// `node bench/record/fifty-users.ts --times 5000000`: a book of so many readings served to fifty people at once; how long they wait, beside a bare
// route and the bare queries on the same machine in the same run.

import { rmSync, statSync } from 'node:fs'
import { Agent } from 'node:http'
import { DatabaseSync } from 'node:sqlite'
import { fileURLToPath } from 'node:url'
import { startServer as startBare } from '../processes.ts'
import { keepFigures, timesAsked } from './keep-figures.ts'
import { entryId, lastInstant, makeLargeBook, sumpId } from './large-book.ts'
import { residentMB } from './resident.ts'
import { startServer } from './server-process.ts'
import { ask, type Kind, once, type Timing, timing } from './users.ts'

const readings = timesAsked(500_000)
const sumps = 500
const people = { users: 50, seconds: 60, thinkMs: 1000 }
const limits = { readP95: 25, writeP95: 40, idleMB: 150 }
const folder = fileURLToPath(new URL(`../../.cache/large-book/${readings}`, import.meta.url))
const file = `${folder}/book.sqlite`
const bareFile = `${folder}/bare.sqlite`

/** Nothing of a run stays for the next: its entries lie after those of the book and have ids of their own. */
const run = Date.now()
const step = (3650 * 86_400_000) / readings
const entryAt = (n: number) => Math.round(lastInstant - 3650 * 86_400_000 + (n + 1) * step)
/** Some place in the book, other ones each time. */
const somewhere = (n: number) => (n * 7919) % readings

const written = (n: number) => {
  const at = new Date(lastInstant + 60_000 + n * 100).toISOString()
  return { id: entryId(n, run), at, kind: 'reading', sump: sumpId(n % sumps), brix: 5, volume: 180, by: 'p1' }
}
const get = (name: string, weight: number, path: (n: number) => string): Kind => ({
  name,
  weight,
  of: (n) => ({ method: 'GET', path: path(n) }),
})
const kinds: Kind[] = [
  get('journal, last page', 6, () => '/api/v1/entries?limit=50'),
  get('changes', 6, (n) => `/api/v1/changes?since=${somewhere(n)}&limit=50`),
  get('one entry', 6, (n) => `/api/v1/entries/${entryId(somewhere(n), entryAt(somewhere(n)))}`),
  get('a water’s analyses', 2, () => '/api/v1/things/water/tap/measurements'),
  get('the shop', 4, () => '/api/v1/book'),
  {
    name: 'write one entry',
    weight: 6,
    of: (n) => ({ method: 'PUT', path: `/api/v1/entries/${written(n).id}`, body: written(n) }),
  },
]
/** What rests on the estimate or on a sump's whole history: seen alone, since they are made from thousands of entries each. */
const heavy: Kind[] = [
  get('a sump with its history', 1, (n) => `/api/v1/sumps/${sumpId(n % sumps)}`),
  get('a sump’s outlook', 1, (n) => `/api/v1/sumps/${sumpId(n % sumps)}/outlook?daysBack=90`),
  get('Today', 1, () => '/api/v1/today'),
]

const made = await makeLargeBook({ file, readings, sumps })
for (const end of ['', '-wal', '-shm']) rmSync(`${bareFile}${end}`, { force: true })
const server = await startServer(['--data', folder], { SUMPBOOK_LOG: 'silent' })
const bare = await startBare([fileURLToPath(new URL('../bare-route.ts', import.meta.url)), bareFile])
try {
  const idleMB = residentMB(server.pid)
  const warmUp = await untilSettled(server.address)
  const ours = await ask(server.address, kinds, people)
  const bareKinds: Kind[] = [
    get('bare read', 24, () => '/livez'),
    {
      name: 'bare write',
      weight: 6,
      of: (n) => ({ method: 'PUT', path: `/api/v1/entries/${written(n).id}`, body: written(n) }),
    },
  ]
  const peer = await ask(bare.address, bareKinds, { ...people, seconds: 20 })
  const raw = rawQueries()
  const withHeavy = process.argv.includes('--heavy') ? await heavyAlone(server.address) : null
  const reads = Object.entries(ours).filter(([name]) => name !== 'write one entry')
  const slowestRead = Math.max(...reads.map(([, { p95 }]) => p95))
  const write = ours['write one entry']!
  keepFigures(
    `fifty users, ${readings} readings`,
    {
      readings,
      sumps,
      ...people,
      made,
      fileMB: Math.round(statSync(file).size / 1e6),
      warmUp,
      idleMB,
      limitIdleMB: limits.idleMB,
      afterMB: residentMB(server.pid),
      milliseconds: ours,
      bare: peer,
      rawQueries: raw,
      readP95: slowestRead,
      limitReadP95: limits.readP95,
      writeP95: write.p95,
      limitWriteP95: limits.writeP95,
      ratioReadToBare: Number((slowestRead / peer['bare read']!.p95).toPrecision(3)),
      ratioWriteToBare: Number((write.p95 / peer['bare write']!.p95).toPrecision(3)),
      ratioReadToRaw: Number((ours['journal, last page']!.p50 / raw['journal, last page']!.p50).toPrecision(3)),
      heavy: withHeavy,
    },
    slowestRead <= limits.readP95 && write.p95 <= limits.writeP95 && idleMB <= limits.idleMB,
  )
} finally {
  await server.stop()
  await bare.stop()
}

/**
 * The first look at Today folds the whole journal, and what came of it is kept some time later: after that a start goes on from there. People are
 * measured when that is over; how they fare meanwhile is measured with one of them, who asks for the last page.
 */
async function untilSettled(address: string): Promise<{ firstTodaySeconds: number; meanwhile: Timing }> {
  const from = performance.now()
  let done = false
  const agent = new Agent({ keepAlive: true })
  const first = once(agent, address, { method: 'GET', path: '/api/v1/today' }).finally(() => {
    done = true
  })
  const meanwhile: number[] = []
  while (!done) {
    const began = performance.now()
    await (await fetch(`${address}/api/v1/entries?limit=50`)).arrayBuffer()
    meanwhile.push(performance.now() - began)
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  await first
  agent.destroy()
  const firstTodaySeconds = Number(((performance.now() - from) / 1000).toPrecision(3))
  await new Promise((resolve) => setTimeout(resolve, 35_000))
  return { firstTodaySeconds, meanwhile: timing(meanwhile) }
}

/** Each alone, one person: the first time, and then again. */
async function heavyAlone(address: string): Promise<Record<string, { firstMs: number; again: Timing }>> {
  const found: Record<string, { firstMs: number; again: Timing }> = {}
  for (const kind of heavy) {
    const from = performance.now()
    const answer = await fetch(`${address}${kind.of(0).path}`)
    await answer.arrayBuffer()
    if (!answer.ok) throw new Error(`${kind.name} answered ${answer.status}`)
    const firstMs = Math.round(performance.now() - from)
    const { [kind.name]: again } = await ask(address, [kind], { users: 1, seconds: 10, thinkMs: 50 })
    found[kind.name] = { firstMs, again: again! }
  }
  return found
}

/** The same rows by the statement alone. */
function rawQueries(): Record<string, Timing> {
  const database = new DatabaseSync(file, { readOnly: true })
  const columns = 'seq, id, at, rank, kind, sump, body, hash, received_at, envelope'
  const page = database.prepare(`select ${columns} from entry order by at desc, rank desc, id desc limit 51`)
  const changes = database.prepare(`select ${columns} from entry where seq > ? order by seq limit 50`)
  const one = database.prepare(`select ${columns} from entry where id = ?`)
  const timed = (query: (n: number) => unknown) => {
    const times: number[] = []
    for (let n = 0; n < 1000; n++) {
      const from = performance.now()
      query(n)
      times.push(performance.now() - from)
    }
    return timing(times)
  }
  try {
    return {
      'journal, last page': timed(() => page.all()),
      changes: timed((n) => changes.all(somewhere(n))),
      'one entry': timed((n) => one.get(entryId(somewhere(n), entryAt(somewhere(n))))),
    }
  } finally {
    database.close()
  }
}
