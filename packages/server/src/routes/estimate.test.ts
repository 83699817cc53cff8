import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-31T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  sumps: ['s1', 's2'].map((sump) => ({ id: sump, name: sump, fluid: 'f1', fillVolume: 200, capacity: 240 })),
  entries: [2, 9, 16, 23, 30].map((day, n) => ({
    id: id(n),
    at: `2026-03-${String(day).padStart(2, '0')}T09:30:00+02:00`,
    kind: 'reading',
    sump: 's1',
    brix: 5,
    volume: 190 - n,
  })),
}

async function shopApp(): Promise<FastifyInstance> {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const part = 'content-disposition: form-data; name="file"; filename="shop.json"'
  const answer = await app.inject({
    method: 'POST',
    url: '/api/v1/import',
    headers: { 'content-type': 'multipart/form-data; boundary=edge' },
    payload: `--edge\r\n${part}\r\n\r\n${JSON.stringify(shop)}\r\n--edge--\r\n`,
  })
  expect(answer.statusCode).toBe(200)
  return app
}

const figure = {
  mean: expect.any(Number),
  sd: expect.any(Number),
  low90: expect.any(Number),
  high90: expect.any(Number),
}

test('an estimate says of every sump where it stands and where it goes, in the order asked', async () => {
  const app = await shopApp()
  const answer = await app.inject('/api/v1/estimate?at=2026-03-31T12:00:00%2B02:00&ahead=14,7,0.5')
  expect(answer.statusCode).toBe(200)
  const { at, sumps } = answer.json()
  expect(at).toBe('2026-03-31T12:00:00+02:00')
  expect(Object.keys(sumps)).toEqual(['s1', 's2'])
  for (const sump of Object.values<Record<string, unknown>>(sumps)) {
    expect(sump.now).toMatchObject({
      concentration: figure,
      volume: figure,
      hardness: figure,
      evaporation: figure,
      carryOff: figure,
    })
    expect(sump.ahead).toMatchObject([14, 7, 0.5].map((days) => ({ days, concentration: figure, volume: figure })))
    expect(sump).toMatchObject({ recipe: { action: expect.any(String) }, doubts: expect.any(Array) })
  }
})

test('without a time it is of now, and one sump may be asked for alone', async () => {
  const app = await shopApp()
  const { at, sumps } = (await app.inject('/api/v1/estimate?sump=s2')).json()
  expect(at).toBe(now.toISOString())
  expect(Object.keys(sumps)).toEqual(['s2'])
})

test.each([
  ['a sump the book does not have', '/api/v1/estimate?sump=s9', 404],
  ['days ahead that are none', '/api/v1/estimate?ahead=7,soon', 422],
  ['days ahead below 0', '/api/v1/estimate?ahead=-1', 422],
  ['a time without offset', '/api/v1/estimate?at=2026-03-31T12:00:00', 400],
  ['a field that is none', '/api/v1/estimate?when=now', 400],
  ['an outlook of a sump the book does not have', '/api/v1/sumps/s9/outlook', 404],
])('%s is refused', async (_, url, status) => {
  const answer = await (await shopApp()).inject(url)
  expect(answer.statusCode).toBe(status)
  expect(answer.headers['content-type']).toContain('application/problem+json')
})

test('an outlook has the days since the first record, the marks, and the days ahead', async () => {
  const app = await shopApp()
  const answer = await app.inject('/api/v1/sumps/s1/outlook')
  expect(answer.statusCode).toBe(200)
  const { history, entries, ahead, now: standing, doubts, topUpToHold, limits } = answer.json()
  // The ends of 2 to 30 March: 29 days, 21 of them in winter time.
  expect(history).toHaveLength(29)
  expect(history[0].at).toBe('2026-03-02T23:00:00.000Z')
  expect(history.at(-1).at).toBe('2026-03-30T22:00:00.000Z')
  expect(entries.map((entry: { id: string }) => entry.id)).toEqual([0, 1, 2, 3, 4].map(id))
  expect(ahead.map(({ days }: { days: number }) => days)).toEqual(Array.from({ length: 28 }, (_, i) => i + 1))
  for (const { concentration, volume, hardness } of [...history, ...ahead]) {
    for (const { low90, low50, mean, high50, high90 } of [concentration, volume, hardness]) {
      expect([low90, low50, mean, high50, high90].every(Number.isFinite)).toBe(true)
      expect(low90).toBeLessThanOrEqual(low50)
      expect(low50).toBeLessThanOrEqual(high50)
      expect(high50).toBeLessThanOrEqual(high90)
    }
  }
  expect(standing.concentration.mean).toBeGreaterThan(0)
  // x* = C* D / (E + D), by the figures beside it.
  const { evaporation: wet, carryOff: oily } = standing
  expect(topUpToHold).toBeCloseTo((8 * oily.mean) / (wet.mean + oily.mean), 10)
  expect(limits).toEqual({ hardness: null, chloride: null })
  expect(doubts).toEqual([])
})

test('the outlook of fewer days is the end of the longer one, to the digits shown', async () => {
  const app = await shopApp()
  const long = (await app.inject('/api/v1/sumps/s1/outlook')).json()
  const short = (await app.inject('/api/v1/sumps/s1/outlook?daysBack=5')).json()
  const days = long.history.slice(-5)
  expect(short.history.map(({ at }: { at: string }) => at)).toEqual(days.map(({ at }: { at: string }) => at))
  for (const [i, { concentration }] of short.history.entries()) {
    expect(concentration.mean).toBeCloseTo(days[i].concentration.mean, 1)
    expect(concentration.high90).toBeCloseTo(days[i].concentration.high90, 1)
  }
  expect(short.now).toEqual(long.now)
})

test('a sump nobody wrote of has an outlook without a past', async () => {
  const { history, ahead } = (await (await shopApp()).inject('/api/v1/sumps/s2/outlook')).json()
  expect(history).toEqual([])
  expect(ahead).toHaveLength(28)
})

test('the answers are described', async () => {
  const { paths } = (await (await shopApp()).inject('/api/openapi.json')).json()
  const { schema } = paths['/api/v1/estimate'].get.responses['200'].content['application/json']
  expect(Object.keys(schema.properties)).toEqual(['at', 'shop', 'learnt', 'sumps'])
  expect(paths['/api/v1/sumps/{id}/outlook'].get.parameters.map(({ name }: { name: string }) => name)).toEqual(
    expect.arrayContaining(['id', 'at', 'daysBack', 'units']),
  )
})
