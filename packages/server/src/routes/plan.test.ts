import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-31T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const day = (n: number, minute = 30) => `2026-03-${String(n).padStart(2, '0')}T09:${minute}:00+02:00`
const weeks = [2, 9, 16, 23, 30]
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [
    { id: 'tap', name: 'Tap', hardness: 250 },
    { id: 'di', name: 'Deionised', hardness: 2 },
  ],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: weeks.flatMap((at, n) => [
    { id: id(2 * n), at: day(at), kind: 'reading', sump: 's1', brix: 5, volume: 178 },
    { id: id(2 * n + 1), at: day(at, 40), kind: 'addition', sump: 's1', volume: 20, strength: 3, water: 'tap' },
  ]),
}

async function shopApp() {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  return app
}

const asked = async (url: string) => {
  const app = await shopApp()
  const answer = await app.inject(`/api/v1/sumps/s1/${url}`)
  return { status: answer.statusCode, body: answer.json() }
}

test('with softer water a sump ends softer, with the same strength', async () => {
  const { status, body: tap } = await asked('plan?water=tap&strength=3&days=182')
  expect(status).toBe(200)
  const { body: di } = await asked('plan?water=di&strength=3&days=182')
  expect(di.ahead[0].hardness.mean).toBeLessThan(0.5 * tap.ahead[0].hardness.mean)
  expect(di.ahead[0].concentration.mean).toBeCloseTo(tap.ahead[0].concentration.mean, 10)
})

test('without a strength a plan pours what holds the target, and ends near it', async () => {
  const { body } = await asked('plan?water=di&days=7,364')
  expect(body).toMatchObject({ sump: 's1', water: 'di', every: 7 })
  expect(body.ahead.map(({ days }: { days: number }) => days)).toEqual([7, 364])
  expect(Math.abs(body.ahead[1].concentration.mean - 8)).toBeLessThan(1.2)
})

test('another water in the past changes the minerals by what was poured since', async () => {
  const { status, body } = await asked('other-water?water=di&since=2026-03-01')
  expect(status).toBe(200)
  const { asPoured, asked: other } = body.minerals.hardness
  // Five pours of 20 L of 97 % water, 250 against 2 mg/L, into some 200 L: at most 5 × 20 × 0.97 × 248 / 178 = 135 mg/L less, and
  // what was carried off meanwhile took some of it along.
  expect(asPoured - other).toBeGreaterThan(60)
  expect(asPoured - other).toBeLessThan(136)
})

test.each([
  ['a water the shop does not have', 'plan?water=rain', 404],
  ['a strength over 100', 'plan?strength=120', 400],
  ['a day that is none', 'other-water?water=di&since=2026-02-30', 400],
  ['an unknown field', 'plan?colour=blue', 400],
])('%s is refused', async (_, url, status) => {
  expect((await asked(url)).status).toBe(status)
})
