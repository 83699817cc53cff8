import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'
import { asker, firstOwner, peopledApp } from '../people/testing.ts'
import { kindCounts } from './kind-counts.ts'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const reading = (n: number) => ({ id: id(n), at: '2026-03-03T09:30:00Z', kind: 'reading', sump: 's1', brix: 5 })

async function openApp() {
  const book = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00Z'))
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return { app, book }
}

/** Samples by name and labels, as the text format of Prometheus has them: `name{label="value",…} number`. */
function samplesOf(text: string): Map<string, number> {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'))
  return new Map(lines.map((line) => [line.slice(0, line.lastIndexOf(' ')), Number(line.slice(line.lastIndexOf(' ')))]))
}

test('requests are counted by route as declared, with their times, and the book by kind of entry', async () => {
  const { app } = await openApp()
  for (const n of [1, 2]) await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(n)}`, payload: reading(n) })
  await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(3)}`, payload: { ...reading(3), brix: 400 } })
  await app.inject('/api/v1/guess-1')
  await app.inject('/api/v1/guess-2')
  const answer = await app.inject('/metrics')
  expect(answer.headers['content-type']).toContain('text/plain; version=0.0.4')
  const samples = samplesOf(answer.body)
  const put = 'method="PUT",route="/api/v1/entries/:id"'
  expect(samples.get(`sumpbook_http_requests_total{${put},status="201"}`)).toBe(2)
  expect(samples.get(`sumpbook_http_requests_total{${put},status="422"}`)).toBe(1)
  expect(samples.get(`sumpbook_http_request_duration_seconds_count{${put}}`)).toBe(3)
  expect(samples.get(`sumpbook_http_request_duration_seconds_bucket{le="+Inf",${put}}`)).toBe(3)
  expect(samples.get('sumpbook_http_requests_total{method="GET",route="none",status="404"}')).toBe(2)
  expect(samples.get('sumpbook_entries{kind="reading"}')).toBe(2)
  expect(samples.get('sumpbook_journal_head')).toBe(2)
  // Both name a sump that this book does not know.
  expect(samples.get('sumpbook_quarantine_entries')).toBe(2)
  expect(samples.get('sumpbook_store_bytes')).toBeGreaterThan(4096)
  for (const name of ['sumpbook_event_loop_lag_p99_seconds', 'process_resident_memory_bytes']) {
    expect(samples.get(name)).toBeGreaterThanOrEqual(0)
  }
  expect(answer.body).not.toContain('guess')
})

test('where accounts are needed, metrics are for who may read: a token will do', async () => {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  expect((await served.app.inject('/metrics')).statusCode).toBe(401)
  const { token } = (await owner('POST', '/me/tokens', { name: 'watch', scopes: ['read'], days: 1 })).json()
  const headers = { authorization: `Bearer ${token}` }
  expect((await served.app.inject({ url: '/metrics', headers })).statusCode).toBe(200)
  expect((await asker(served.app)('GET', '/book')).statusCode).toBe(401)
})

test('alive is not ready: without its store a server says so', async () => {
  const { app, book } = await openApp()
  expect((await app.inject('/readyz')).statusCode).toBe(200)
  await book.close()
  expect((await app.inject('/livez')).statusCode).toBe(200)
  const answer = await app.inject('/readyz')
  expect([answer.statusCode, answer.json().type]).toEqual([503, 'urn:sumpbook:store-out-of-reach'])
})

test('entries are counted on from the last look, part by part, and no look takes longer than its time', async () => {
  const asked: [number, number][] = []
  let seq = 5
  const counts = kindCounts(
    {
      head: async () => ({ seq, hash: '', setupSeq: 0 }),
      countByKind: async (after, upTo) => {
        asked.push([after, upTo])
        return new Map([['reading', upTo - after]])
      },
    },
    { atOnce: 2 },
  )
  expect(await counts.read()).toEqual(new Map([['reading', 5]]))
  seq = 6
  await Promise.all([counts.read(), counts.read()])
  expect(asked).toEqual([
    [0, 2],
    [2, 4],
    [4, 5],
    [5, 6],
  ])
})
