import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { buildApp } from '@sumpbook/server'
import type { FastifyInstance, InjectOptions } from 'fastify'
import { type Dice, diceOf } from './mutate.ts'
import { hangMs } from './parser.ts'
import { type Schema, sample, strange } from './sample.ts'

interface Operation {
  method: string
  path: string
  parameters: { name: string; in: string; required?: boolean; schema: Schema }[]
  body: Schema | null
}

/** What became of the requests of one operation. */
export interface ApiReport {
  seed: number
  requests: number
  operations: number
  /** How many answers had each status. */
  statuses: Record<string, number>
  /** Operations that never answered with success: their requests were not good enough to get far. */
  neverTaken: string[]
  slowestMs: number
  slowest: string
  findings: { n: number; request: string; what: string }[]
}

const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [
    { id: 'tap', name: 'Tap', kind: 'tap', hardness: 220 },
    { id: 'di', name: 'Deionised', kind: 'deionised', hardness: 5 },
  ],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [
    {
      id: '00000000-0000-4000-8000-000000000001',
      at: '2026-03-01T09:30:00Z',
      kind: 'reading',
      sump: 's1',
      brix: 5,
      volume: 180,
    },
  ],
}

/**
 * Asks every operation that the API's own description names, in turn, with values that mostly fit and sometimes do not: no answer may be an
 * error of the server, every refusal must be a problem document, and none may take long.
 */
export async function fuzzApi({
  seed,
  from = 0,
  requests,
}: {
  seed: number
  from?: number
  requests: number
}): Promise<ApiReport> {
  let now = Date.parse('2026-03-03T10:00:00Z')
  const book = openBook(await openSqliteStore(inMemory), () => {
    now += 1
    return new Date(now)
  })
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  const app = await buildApp({
    book,
    version: '0.0.0-fuzz',
  })
  const operations = operationsOf((await app.inject('/api/openapi.json')).json())
  const report: ApiReport = {
    seed,
    requests,
    operations: operations.length,
    statuses: {},
    neverTaken: [],
    slowestMs: 0,
    slowest: '',
    findings: [],
  }
  const taken = new Set<Operation>()
  try {
    for (let n = from; n < from + requests; n++) {
      const operation = operations[n % operations.length]!
      const request = requestOf(operation, diceOf(seed, n))
      const said = `${request.method} ${String(request.url).slice(0, 120)}`
      const began = process.cpuUsage()
      const what = await faultOf(app, request, (status) => {
        report.statuses[status] = (report.statuses[status] ?? 0) + 1
        if (status < 300) taken.add(operation)
      })
      const took = workedSince(began)
      if (took > report.slowestMs) [report.slowestMs, report.slowest] = [Math.round(took), said]
      const found = what ?? (took > hangMs ? `took ${Math.round(took)} ms` : null)
      if (found !== null && report.findings.length < 20) report.findings.push({ n, request: said, what: found })
    }
  } finally {
    await app.close()
    await book.close()
  }
  report.neverTaken = operations.filter((one) => !taken.has(one)).map(({ method, path }) => `${method} ${path}`)
  return report
}

/** What this program has worked since, milliseconds: a machine that is busy elsewhere, or a slow disk, makes no answer slow. */
function workedSince(began: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(began)
  return (user + system) / 1000
}

/** What is wrong with the answer; null where it is as it must be. */
async function faultOf(
  app: FastifyInstance,
  request: InjectOptions,
  seen: (status: number) => void,
): Promise<string | null> {
  const { statusCode, headers, body } = await app.inject(request)
  seen(statusCode)
  if (statusCode >= 500) return `answered ${statusCode}: ${body.slice(0, 300)}`
  if (statusCode < 400 || request.method === 'HEAD') return null
  const isProblem = String(headers['content-type']).includes('application/problem+json')
  return isProblem && typeof JSON.parse(body).title === 'string'
    ? null
    : `refused without a problem document: ${body.slice(0, 200)}`
}

function operationsOf(document: { paths: Record<string, Record<string, Record<string, unknown>>> }): Operation[] {
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, said]) => {
      const content = (said.requestBody as { content?: Record<string, { schema: Schema }> } | undefined)?.content
      return {
        method: method.toUpperCase(),
        path,
        parameters: (said.parameters as Operation['parameters'] | undefined) ?? [],
        body: content?.['application/json']?.schema ?? null,
      }
    }),
  )
}

function requestOf({ method, path, parameters, body }: Operation, dice: Dice): InjectOptions {
  const odd = [4, 12, 60][dice(3)]!
  const text = (value: unknown) => (typeof value === 'string' ? value : (JSON.stringify(value) ?? ''))
  const encoded = (value: unknown) => encodeURIComponent(text(value).toWellFormed())
  const names = [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name!)
  let url = path
  const value = body === null ? strange[dice(strange.length)] : sample(body, dice, odd)
  const own = (value as { id?: unknown } | null | undefined)?.id
  // A body and its address mostly name the same thing.
  if (typeof own === 'string' && dice(5) > 0) url = url.replace('{id}', encodeURIComponent(own.toWellFormed()) || 'x')
  for (const name of names) {
    const schema = parameters.find((one) => one.in === 'path' && one.name === name)?.schema ?? {}
    url = url.replace(`{${name}}`, encoded(sample(schema, dice, odd)) || 'x')
  }
  const asked = parameters.filter((one) => one.in === 'query' && (one.required === true || dice(2) === 0))
  const query = asked.map(({ name, schema }) => `${name}=${encoded(sample(schema, dice, odd))}`)
  if (dice(25) === 0) query.push(`${encoded(strange[dice(strange.length)])}=1`)
  if (query.length > 0) url += `?${query.join('&')}`
  if (method === 'GET' || method === 'DELETE' || method === 'HEAD') return { method, url } as InjectOptions
  const types = [
    'application/json',
    'application/json',
    'application/json',
    'text/plain',
    'multipart/form-data; boundary=x',
    'application/octet-stream',
    '',
  ]
  const type = dice(8) === 0 ? types[dice(types.length)]! : 'application/json'
  let payload = JSON.stringify(value) ?? ''
  if (dice(12) === 0) payload = payload.slice(0, dice(payload.length + 1))
  return { method, url, payload, headers: type === '' ? {} : { 'content-type': type } } as InjectOptions
}
