// `node bench/fuzz/run.ts [--cases 1000000] [--seed N] [--only CSV] [--from N]`: fuzzes every parser, each in a thread of its own that is watched.
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { keepFigures } from '../record/keep-figures.ts'
import { fuzz } from './fuzz.ts'
import { type FuzzedParser, type FuzzReport, hangMs } from './parser.ts'

interface Order {
  name: string
  seed: number
  from: number
  cases: number
  /** The case it is at, and the count of those begun: a thread that hangs no longer answers, so this is shared memory. */
  at: Int32Array
}

const parsers: Record<string, () => Promise<FuzzedParser>> = {
  CSV: async () => (await import('./parsers/sheets.ts')).csv,
  XLSX: async () => (await import('./parsers/sheets.ts')).xlsx,
  JSON: async () => (await import('./parsers/book-file.ts')).bookFile,
  units: async () => (await import('./parsers/quantities.ts')).quantities,
}

if (isMainThread) await watchAll()
else {
  const { name, seed, from, cases, at } = workerData as Order
  const parser = await parsers[name]!()
  parentPort!.postMessage(await fuzz(parser, { seed, from, cases, tell: (n) => Atomics.store(at, 0, n) }))
}

async function watchAll(): Promise<void> {
  const { values } = parseArgs({
    options: {
      cases: { type: 'string', default: '1000000' },
      seed: { type: 'string' },
      only: { type: 'string' },
      from: { type: 'string', default: '0' },
    },
  })
  const seed = Number(values.seed ?? Date.now() % 2 ** 31)
  for (const name of Object.keys(parsers).filter((one) => values.only === undefined || values.only === one)) {
    const order = {
      name,
      seed,
      from: Number(values.from),
      cases: Number(values.cases),
      at: new Int32Array(new SharedArrayBuffer(4)),
    }
    const began = performance.now()
    const report = await watched(order)
    const seconds = Math.round((performance.now() - began) / 1000)
    keepFigures(`fuzz, ${name}`, { ...report, seconds }, report.findings.length === 0)
    if (report.findings.length > 0) return
  }
}

/** Ends a thread that has been at one case for thirty times what a hang is: it does not come back by itself. */
function watched(order: Order): Promise<FuzzReport> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(fileURLToPath(import.meta.url), { workerData: order })
    let [last, since] = [-1, performance.now()]
    const look = setInterval(() => {
      const n = Atomics.load(order.at, 0)
      if (n !== last) [last, since] = [n, performance.now()]
      else if (performance.now() - since > 30 * hangMs && n > order.from) {
        void worker.terminate()
        reject(new Error(`${order.name}: case ${n} of seed ${order.seed} hangs`))
      }
    }, 500)
    const done = () => clearInterval(look)
    worker.once('message', (report: FuzzReport) => {
      done()
      resolve(report)
    })
    worker.once('error', (error) => {
      done()
      reject(
        new Error(`${order.name}: case ${Atomics.load(order.at, 0)} of seed ${order.seed} ends its thread`, {
          cause: error,
        }),
      )
    })
  })
}
