import { monitorEventLoopDelay } from 'node:perf_hooks'
import { type Book, quarantine } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { Counter, Gauge, Histogram, Registry } from 'prom-client'
import { kindCounts } from './kind-counts.ts'

/** Seconds: a bound where a phone notices, and some on both sides. */
const buckets = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.04, 0.1, 0.25, 1, 5, 30]
/** What is counted from many rows is counted again only after this long. */
const recountAfterMs = 60_000

/**
 * `/metrics` in Prometheus' text: what was asked and how long it took, how the process is, and how far the book has come. Nothing of
 * people, and of things only how many: routes stand as they are declared, never as they were asked for.
 */
export function watchMetrics(app: FastifyInstance, book: Book): void {
  const registers = [new Registry()]
  const [registry] = registers
  const requests = new Counter({
    name: 'sumpbook_http_requests_total',
    help: 'Requests answered',
    labelNames: ['method', 'route', 'status'],
    registers,
  })
  const seconds = new Histogram({
    name: 'sumpbook_http_request_duration_seconds',
    help: 'From a request’s arrival to the end of its answer',
    labelNames: ['method', 'route'],
    buckets,
    registers,
  })
  app.addHook('onResponse', async (request, reply) => {
    // Whatever is asked for that is not there shares one label: somebody who guesses addresses makes no new ones.
    const route = request.routeOptions.url ?? 'none'
    requests.inc({ method: request.method, route, status: reply.statusCode })
    seconds.observe({ method: request.method, route }, reply.elapsedTime / 1000)
  })
  watchProcess(app, registers)
  watchBook(book, registers)
  app.get(
    '/metrics',
    { schema: { hide: true }, config: { access: { role: 'reader', scope: 'read' } } },
    async (_, reply) => reply.type(registry!.contentType).send(await registry!.metrics()),
  )
}

function watchProcess(app: FastifyInstance, registers: Registry[]): void {
  const delay = monitorEventLoopDelay({ resolution: 20 })
  delay.enable()
  app.addHook('onClose', async () => {
    delay.disable()
  })
  const gauge = (name: string, help: string, value: () => number) =>
    new Gauge({
      name,
      help,
      registers,
      collect() {
        this.set(value())
      },
    })
  // Nanoseconds; the histogram holds the time between its own ticks.
  gauge('sumpbook_event_loop_lag_p99_seconds', 'How late a timer is, 99th percentile since the last look', () =>
    Math.max(0, delay.percentile(99) / 1e9 - 0.02),
  )
  gauge('sumpbook_event_loop_lag_max_seconds', 'How late a timer was at worst since the last look', () => {
    const worst = Math.max(0, delay.max / 1e9 - 0.02)
    delay.reset()
    return worst
  })
  gauge('process_resident_memory_bytes', 'Memory of the process', () => process.memoryUsage.rss())
  gauge('process_heap_bytes', 'Memory of the program’s objects', () => process.memoryUsage().heapUsed)
  gauge('process_cpu_seconds_total', 'Processor time of the process', () => {
    const { user, system } = process.cpuUsage()
    return (user + system) / 1e6
  })
  const since = Date.now() / 1000 - process.uptime()
  gauge('process_start_time_seconds', 'When the process began, seconds since 1970', () => since)
}

function watchBook(book: Book, registers: Registry[]): void {
  const { store } = book
  const counts = kindCounts(store)
  new Gauge({
    name: 'sumpbook_entries',
    help: 'Entries in the journal by kind, withdrawn ones included, as far as they are counted',
    labelNames: ['kind'],
    registers,
    async collect() {
      for (const [kind, count] of await counts.read()) this.set({ kind }, count)
    },
  })
  const gauge = (name: string, help: string, value: () => Promise<number>) =>
    new Gauge({
      name,
      help,
      registers,
      async collect() {
        this.set(await value())
      },
    })
  gauge('sumpbook_journal_head', 'Place of the last entry in the journal', async () => (await store.head()).seq)
  gauge('sumpbook_store_bytes', 'Bytes of the book where it lies', () => store.bytes())
  gauge(
    'sumpbook_quarantine_entries',
    'Entries that count nowhere for now, as of the last minute',
    rarely(async () => (await quarantine(store)).length),
  )
}

/** The last answer again, for a while. */
function rarely(ask: () => Promise<number>): () => Promise<number> {
  let last: { at: number; answer: Promise<number> } | null = null
  return () => {
    if (last === null || performance.now() - last.at > recountAfterMs) last = { at: performance.now(), answer: ask() }
    return last.answer.catch((error: unknown) => {
      last = null
      throw error
    })
  }
}
