import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from './app.ts'

const now = new Date('2026-03-03T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
}
const reading = (n: number, more: Record<string, unknown> = {}) => ({
  id: id(n),
  at: '2026-03-03T09:30:00+01:00',
  kind: 'reading',
  sump: 's1',
  brix: 3.5,
  volume: 162,
  ...more,
})

async function emptyApp(): Promise<FastifyInstance> {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return app
}

/** A form with a map and a file, as a browser sends it. */
function form(file: string, text: string, map = '{}') {
  const part = (head: string, body: string) => `--edge\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  return {
    headers: { 'content-type': 'multipart/form-data; boundary=edge' },
    payload: `${part('name="map"', map)}${part(`name="file"; filename="${file}"`, text)}--edge--\r\n`,
  }
}
const bring = (app: FastifyInstance, preview = false) =>
  app.inject({ method: 'POST', url: `/api/v1/import?preview=${preview}`, ...form('shop.json', JSON.stringify(shop)) })

async function shopApp(): Promise<FastifyInstance> {
  const app = await emptyApp()
  expect((await bring(app)).statusCode).toBe(200)
  return app
}
const put = (app: FastifyInstance, entry: { id: string }, under = entry.id) =>
  app.inject({ method: 'PUT', url: `/api/v1/entries/${under}`, payload: entry })

test('an entry is made once: 201, then 200, and 409 for another under its id', async () => {
  const app = await shopApp()
  expect((await put(app, reading(1))).statusCode).toBe(201)
  expect((await put(app, reading(1))).statusCode).toBe(200)
  const other = await put(app, reading(1, { brix: 4 }))
  expect(other.statusCode).toBe(409)
  expect(other.headers['content-type']).toContain('application/problem+json')
})

test('many phones at once: every entry is there once', async () => {
  const app = await shopApp()
  const statuses = await Promise.all(
    Array.from({ length: 60 }, async (_, i) => (await put(app, reading((i % 20) + 1))).statusCode),
  )
  expect(statuses.filter((status) => status === 201)).toHaveLength(20)
  expect(statuses.filter((status) => status === 200)).toHaveLength(40)
  const { entries } = (await app.inject('/api/v1/entries?limit=500')).json()
  expect(entries).toHaveLength(20)
})

test('bad input is a problem with field, found and expected, and changes nothing', async () => {
  const app = await shopApp()
  const answer = await put(app, reading(1, { brix: 96, volume: -3 }))
  expect(answer.statusCode).toBe(422)
  expect(answer.json()).toMatchObject({
    type: 'urn:sumpbook:refused-input',
    status: 422,
    confirmable: false,
    errors: [
      { pointer: '/brix', found: '96', expected: 'at most 95' },
      { pointer: '/volume', found: '-3', expected: 'at least 0' },
    ],
  })
  expect((await app.inject('/readyz')).json()).toEqual({ status: 'ok', seq: 0 })
})

test.each([
  ['a body that is no JSON', '{"brix": NaN}', 400],
  ['a body that ends early', '{"id": "0', 400],
  ['a body that is no entry', '[]', 422],
  ['a body that is null', 'null', 422],
])('%s is refused', async (_, payload, status) => {
  const app = await shopApp()
  const headers = { 'content-type': 'application/json' }
  const answer = await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(1)}`, payload, headers })
  expect(answer.statusCode).toBe(status)
  expect(answer.headers['content-type']).toContain('application/problem+json')
})

test('the id of the address counts', async () => {
  const app = await shopApp()
  const { id: _, ...withoutId } = reading(1)
  expect((await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(1)}`, payload: withoutId })).statusCode).toBe(
    201,
  )
  expect((await put(app, reading(2), id(3))).json()).toMatchObject({ errors: [{ pointer: '/id' }] })
  expect((await put(app, reading(4, { id: 'four' }))).json()).toMatchObject({
    errors: [{ pointer: '/id', expected: 'a UUID' }],
  })
})

test('a batch tells the fate of each', async () => {
  const app = await shopApp()
  const entries = [reading(1), reading(1), reading(2, { ph: 15 }), reading(3, { sump: 'new' })]
  const { results } = (await app.inject({ method: 'PUT', url: '/api/v1/entries', payload: { entries } })).json()
  expect(results).toMatchObject([
    { status: 'added', quarantine: null },
    { status: 'same' },
    { status: 'refused', faults: [{ pointer: '/ph' }] },
    { status: 'added', quarantine: expect.stringContaining('new') },
  ])
})

test('a batch may be a bare list', async () => {
  const app = await shopApp()
  const answer = await app.inject({ method: 'PUT', url: '/api/v1/entries', payload: [reading(1), reading(2)] })
  expect(answer.json().results).toMatchObject([{ status: 'added' }, { status: 'added' }])
  expect((await app.inject({ method: 'PUT', url: '/api/v1/entries', payload: { entries: 7 } })).statusCode).toBe(422)
})

test('a time in the future can be confirmed', async () => {
  const app = await shopApp()
  const late = reading(1, { at: '2026-03-04T00:00:00Z' })
  expect((await put(app, late)).json()).toMatchObject({ status: 422, confirmable: true, errors: [{ pointer: '/at' }] })
  expect((await put(app, { ...late, confirmed: ['/at'] } as never)).statusCode).toBe(201)
})

test('a reading changes today', async () => {
  const app = await shopApp()
  expect((await app.inject('/api/v1/today')).json().items).toMatchObject([{ sump: 's1', condition: 'measure-first' }])
  await put(app, reading(1))
  const today = (await app.inject('/api/v1/today')).json()
  expect(today.items).toMatchObject([{ sump: 's1', condition: 'lean', action: 'top-up' }])
  expect((await app.inject('/api/v1/today?units=us')).json().items[0].words.headline).toMatch(
    /^Add [\d.]+ gal at [\d.]+ %$/,
  )
  expect((await app.inject('/api/v1/today?at=2026-03-03T08:00:00Z')).json().items).toMatchObject([
    { condition: 'measure-first' },
  ])
})

test('unknown words in a query are refused', async () => {
  const app = await shopApp()
  expect((await app.inject('/api/v1/today?when=now')).statusCode).toBe(400)
  expect((await app.inject('/api/v1/entries?limit=0')).statusCode).toBe(400)
  expect((await app.inject('/api/v1/entries?cursor=abc')).statusCode).toBe(422)
})

test('a sump has its history, and an unknown one is not found', async () => {
  const app = await shopApp()
  await put(app, reading(1, { ph: 9.1 }))
  await put(app, {
    id: id(2),
    at: '2026-03-03T09:00:00Z',
    kind: 'void',
    entry: id(1),
    reason: 'wrong machine',
  } as never)
  const page = (await app.inject('/api/v1/sumps/s1')).json()
  expect(page).toMatchObject({
    sump: 's1',
    history: [
      { entry: id(1), text: '3.5 °Brix, level 162 L, pH 9.1', withdrawn: true, reason: 'wrong machine', ph: 9.1 },
    ],
  })
  expect(page.history[0].concentration.mean).toBeCloseTo(5.6, 10)
  expect((await app.inject('/api/v1/sumps/s9')).statusCode).toBe(404)
  expect((await app.inject('/api/v1/sumps')).json().sumps).toMatchObject([{ sump: 's1' }])
})

test('a name as long as names may be is found by its address; a longer address is refused as a problem', async () => {
  const app = await emptyApp()
  const long = 'ä'.repeat(200)
  const sumps = [{ ...shop.sumps[0], id: long }]
  await app.inject({
    method: 'POST',
    url: '/api/v1/import',
    ...form('shop.json', JSON.stringify({ ...shop, sumps })),
  })
  expect((await app.inject(`/api/v1/sumps/${encodeURIComponent(long)}`)).json()).toMatchObject({ sump: long })
  const answer = await app.inject(`/api/v1/sumps/${'a'.repeat(5000)}`)
  expect(answer.headers['content-type']).toContain('application/problem+json')
  expect(answer.statusCode).toBeLessThan(500)
})

test('the journal comes page by page, youngest first', async () => {
  const app = await shopApp()
  for (const n of [1, 2, 3]) await put(app, reading(n, { at: `2026-03-03T0${n}:00:00Z` }))
  const first = (await app.inject('/api/v1/entries?limit=2')).json()
  expect(first.entries.map((line: { id: string }) => line.id)).toEqual([id(3), id(2)])
  const second = (await app.inject(`/api/v1/entries?limit=2&cursor=${first.next}`)).json()
  expect(second).toMatchObject({ entries: [{ id: id(1) }], next: null })
})

test('the feed of changes goes on from where a device was', async () => {
  const app = await shopApp()
  for (const n of [3, 1, 2]) await put(app, reading(n))
  const first = (await app.inject('/api/v1/changes?limit=2')).json()
  expect(first).toMatchObject({
    since: 2,
    head: 3,
    changes: [
      { seq: 1, entry: { id: id(3) } },
      { seq: 2, entry: { id: id(1) } },
    ],
  })
  expect((await app.inject('/api/v1/changes?since=2')).json().changes).toMatchObject([{ seq: 3, entry: { id: id(2) } }])
  expect((await app.inject('/api/v1/changes?since=3')).json()).toEqual({ changes: [], since: 3, head: 3 })
})

test('a preview of an import writes nothing', async () => {
  const app = await emptyApp()
  expect((await bring(app, true)).json()).toMatchObject({ kind: 'book', counts: { things: 4, entries: 0 } })
  expect((await app.inject('/api/v1/book')).json()).toMatchObject({ empty: true, sumps: 0 })
  await bring(app)
  expect((await app.inject('/api/v1/book')).json()).toMatchObject({
    empty: false,
    sumps: 1,
    shop: { name: 'Test works' },
  })
})

test('a water has its analyses, and a kind of thing that is not measured is refused', async () => {
  const app = await shopApp()
  const analysis = { id: id(1), at: '2026-03-01T08:00:00Z', kind: 'analysis', about: { kind: 'water', id: 'di' } }
  await put(app, { ...analysis, hardness: 6 } as never)
  expect((await app.inject('/api/v1/things/water/di/measurements')).json()).toMatchObject({
    measurements: [{ id: id(1), hardness: 6 }],
  })
  expect((await app.inject('/api/v1/things/water/none/measurements')).json()).toEqual({ measurements: [] })
  expect((await app.inject('/api/v1/things/fluid/f1/measurements')).statusCode).toBe(400)
})

test('the export is the book file', async () => {
  const app = await shopApp()
  await put(app, reading(1))
  const answer = await app.inject('/api/v1/export')
  expect(answer.headers['content-disposition']).toContain('sumpbook.json')
  expect(answer.json()).toEqual({ ...shop, entries: [reading(1)] })
})

test('a calculation answers by name, refuses by field, and names the others', async () => {
  const app = await emptyApp()
  const calc = (name: string, payload: unknown) =>
    app.inject({ method: 'POST', url: `/api/v1/calc/${name}`, payload: payload as object })
  const input = { volume: 150, concentration: 6.5, fillVolume: 200, target: 6 }
  expect((await calc('top-up', input)).json()).toMatchObject({ action: 'top-up', add: { volume: 50, strength: 4.5 } })
  expect((await calc('top-up', { ...input, targit: 6 })).json()).toMatchObject({
    status: 422,
    errors: [{ pointer: '/targit' }],
  })
  expect((await calc('nonsense', {})).statusCode).toBe(404)
})

test('the API is described by OpenAPI 3.1, every route of it', async () => {
  const app = await emptyApp()
  const api = (await app.inject('/api/openapi.json')).json()
  expect(api.openapi).toMatch(/^3\.1\./)
  expect(Object.keys(api.paths)).toEqual(
    expect.arrayContaining([
      '/api/v1/entries/{id}',
      '/api/v1/today',
      '/api/v1/calc/top-up',
      '/api/v1/import',
      '/api/v1/changes',
    ]),
  )
  expect(api.paths['/api/v1/entries/{id}'].put.requestBody.content['application/json'].schema).toBeDefined()
})

test('it lives and is ready', async () => {
  const app = await emptyApp()
  expect((await app.inject('/livez')).statusCode).toBe(200)
  expect((await app.inject('/readyz')).statusCode).toBe(200)
  expect((await app.inject('/api/v1/nothing')).json()).toMatchObject({ status: 404 })
})

test('no page of a plain-http address is told to load its parts by https', async () => {
  const app = await emptyApp()
  const policy = String((await app.inject('/livez')).headers['content-security-policy'])
  expect(policy).toContain("default-src 'self'")
  expect(policy).not.toContain('upgrade-insecure-requests')
})

test('a page of another site cannot make a browser write', async () => {
  const app = await emptyApp()
  const from = (headers: Record<string, string>) =>
    app.inject({
      method: 'POST',
      url: '/api/v1/calc/ratio',
      payload: { percent: 5 },
      headers: { host: 'localhost:7340', ...headers },
    })
  expect((await from({})).statusCode).toBe(200)
  expect((await from({ origin: 'http://localhost:7340', 'sec-fetch-site': 'same-origin' })).statusCode).toBe(200)
  expect((await from({ origin: 'https://elsewhere.example' })).statusCode).toBe(403)
  expect((await from({ origin: 'null' })).statusCode).toBe(403)
  expect((await from({ 'sec-fetch-site': 'cross-site' })).json()).toMatchObject({
    status: 403,
    title: 'From another site',
  })
})

test('the log goes out as a table too, that comes in again; another form is refused', async () => {
  const app = await shopApp()
  await put(app, reading(1, { note: '=1+1', temperature: -4 }))
  const csv = await app.inject('/api/v1/export?format=csv')
  expect(csv.headers).toMatchObject({
    'content-type': 'text/csv; charset=utf-8',
    'content-disposition': 'attachment; filename="sumpbook.csv"',
  })
  expect(csv.body).toContain(',-4,')
  expect(csv.body).toContain(",'=1+1,")
  const book = await app.inject({ method: 'POST', url: '/api/v1/import?preview=true', ...form('log.csv', csv.body) })
  expect(book.json()).toMatchObject({ kind: 'sheet', faults: [], counts: { rows: 1 } })
  const xlsx = await app.inject('/api/v1/export?format=xlsx')
  // A workbook is a zip: APPNOTE 4.3.7, "PK\3\4".
  expect(xlsx.rawPayload.subarray(0, 4).toString('latin1')).toBe('PK\x03\x04')
  expect((await app.inject('/api/v1/export?format=xls')).statusCode).toBe(400)
})

test.each([
  [
    'cut inside the file',
    'multipart/form-data; boundary=edge',
    '--edge\r\ncontent-disposition: form-data; name="file"; filename="a.csv"\r\n\r\nDate,',
  ],
  ['cut after the edge', 'multipart/form-data; boundary=edge', '--edge\r\n'],
  ['without an edge', 'multipart/form-data', 'Date,'],
  ['that is none', 'multipart/form-data; boundary=edge', '"abc"'],
])('a form %s is refused, and is no error of the server', async (_, type, payload) => {
  const app = await emptyApp()
  const answer = await app.inject({ method: 'POST', url: '/api/v1/import', headers: { 'content-type': type }, payload })
  expect(answer.statusCode).toBe(422)
  expect(answer.json().errors[0].found).toContain('a form that cannot be read')
})
