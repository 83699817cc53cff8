import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-31T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric', currency: 'EUR' },
  fluids: [
    {
      id: 'f1',
      name: 'Semi 1',
      brixFactor: 1.6,
      pricePerLitre: 5,
      limits: { concentration: { low: 6, target: 8, high: 10 } },
    },
  ],
  waters: [{ id: 'tap', name: 'Tap', costPerLitre: 0.004 }],
  sumps: [{ id: 's1', name: '=Mill 1', fluid: 'f1', fillVolume: 200 }],
  entries: [
    { id: id(1), at: '2026-03-02T09:30:00+01:00', kind: 'reading', sump: 's1', brix: 5, volume: 180, by: 'p1' },
    {
      id: id(2),
      at: '2026-03-02T09:40:00+01:00',
      kind: 'addition',
      sump: 's1',
      volume: 20,
      strength: 10,
      water: 'tap',
      by: 'p1',
    },
    {
      id: id(3),
      at: '2026-03-03T09:40:00+01:00',
      kind: 'addition',
      sump: 's1',
      volume: 90,
      strength: 10,
      water: 'tap',
    },
    { id: id(4), at: '2026-03-03T10:40:00+01:00', kind: 'void', entry: id(3), reason: 'poured elsewhere' },
  ],
}

async function asked(url: string) {
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => now)
  const report = await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  expect(report.faults).toEqual([])
  const app = await buildApp({ book, version: 'test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const response = await app.inject({ url: `/api/v1/${url}`, headers: { host: 'localhost' } })
  return { status: response.statusCode, text: response.body, type: response.headers['content-type'] }
}
const json = async (url: string) => JSON.parse((await asked(url)).text)

test('a span of days has its cost by part and sump', async () => {
  // 2 L × 5 and 18 L × 0.004
  expect(await json('cost?from=2026-03-01&to=2026-03-31')).toMatchObject({
    cents: 1007,
    parts: { concentrate: 1000, water: 7 },
    sumps: [
      { sump: 's1', cents: 1007 },
      { sump: null, cents: 0 },
    ],
    head: { seq: 4 },
  })
  expect(await json('cost?from=2026-03-01&to=2026-03-31&sump=s1')).toMatchObject({ sump: 's1', cents: 1007 })
})

test('habits and lives are answered', async () => {
  expect(await json('cost/habits?from=2026-03-01&to=2026-03-31')).toMatchObject({
    days: 31,
    sumps: [{ sump: 's1', target: 8 }],
  })
  expect(await json('cost/life')).toMatchObject({ sumps: [{ sump: 's1', growth: { outcome: 'too-few' } }] })
})

test('a month has its report with corrections, people and the head of the chain', async () => {
  const report = await json('reports/month?month=2026-03')
  expect(report).toMatchObject({
    month: '2026-03',
    isOver: false,
    entries: 3,
    head: { seq: 4, hash: expect.stringMatching(/^[0-9a-f]{64}$/) },
    corrections: [{ entry: id(3), withdrawn: { reason: 'poured elsewhere' } }],
    people: [
      { id: 'p1', entries: 2 },
      { id: null, entries: 1 },
    ],
    names: {},
  })
})

test('a month as a table runs no formula, and says which entries are in it', async () => {
  const { text, type } = await asked('reports/month?month=2026-03&format=csv')
  expect(type).toContain('text/csv')
  const lines = text.trim().split('\r\n')
  expect(lines[1]).toMatch(/^2026-03,'=Mill 1,10\.07,10,0\.07,0,0,0,0,20,2,18,0,0,0,/)
  expect(lines.at(-2)).toMatch(/^2026-03,All,10\.07,/)
  expect(lines.at(-1)).toMatch(/^"?Entries up to 4, chain [0-9a-f]{64}/)
})

test.each([
  ['a sump the shop does not have', 'cost?from=2026-03-01&to=2026-03-31&sump=s9', 404],
  ['days the wrong way round', 'cost?from=2026-03-31&to=2026-03-01', 422],
  ['no day', 'cost?from=2026-03-01', 400],
  ['a month that is none', 'reports/month?month=2026-13', 400],
  ['an unknown field', 'cost?from=2026-03-01&to=2026-03-31&colour=blue', 400],
])('%s is refused', async (_, url, status) => {
  expect((await asked(url)).status).toBe(status)
})
