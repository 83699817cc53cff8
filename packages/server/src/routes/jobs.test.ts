import { type Book, inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-03T10:00:00.000Z')
const testId = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [{ id: 'tap', name: 'Tap', kind: 'tap', hardness: 250 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [{ id: testId(1), at: '2026-03-03T09:30:00+01:00', kind: 'reading', sump: 's1', brix: 3.5, volume: 162 }],
}

async function served(): Promise<{ app: FastifyInstance; book: Book }> {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  return { app, book }
}

const ask = async (app: FastifyInstance, url: string) => {
  const response = await app.inject({ url: `/api/v1${url}` })
  return { status: response.statusCode, body: response.json() as Record<string, never> }
}

test('a plan’s opening, put as an entry, is a job that is signed step by step', async () => {
  const { app } = await served()
  const plan = await ask(app, '/sumps/s1/cleanout-plan?heldBack=10&on=2026-03-03')
  expect(plan).toMatchObject({ status: 200, body: { waste: 460, opening: { sheet: 'cleanout' } } })
  const { opening } = plan.body as unknown as { opening: object }
  const put = (n: number, entry: object) =>
    app.inject({
      method: 'PUT',
      url: `/api/v1/entries/${testId(n)}`,
      payload: { id: testId(n), at: now.toISOString(), ...entry },
    })
  expect((await put(7, { ...opening, job: testId(7) })).statusCode).toBe(201)
  expect((await ask(app, '/jobs')).body).toMatchObject({ planned: [{ id: testId(7), plannedOn: '2026-03-03' }] })
  await put(8, { kind: 'signoff', sump: 's1', job: testId(7), step: 'ready' })
  expect((await ask(app, `/jobs/${testId(7)}`)).body).toMatchObject({ state: 'open', nextStep: 'skim', done: 1 })
  expect((await ask(app, `/jobs/${testId(9)}`)).status).toBe(404)
})

test('what a plan cannot be made of is refused at its field', async () => {
  const { app } = await served()
  expect(await ask(app, '/sumps/s1/cleanout-plan?heldBack=300')).toMatchObject({
    status: 422,
    body: { errors: [{ pointer: '/heldBack' }] },
  })
  expect((await ask(app, '/sumps/s1/cleanout-plan?colour=red')).status).toBe(400)
  expect((await ask(app, '/sumps/no/cleanout-plan')).status).toBe(404)
})

test('machines side by side, and upkeep with what is proposed', async () => {
  const { app } = await served()
  expect(await ask(app, '/cleanouts/side-by-side?sumps=s1&start=2026-03-04T06:00:00Z')).toMatchObject({
    status: 200,
    body: { machines: [{ name: 'Mill 1', start: '2026-03-04T06:00:00.000Z' }], exact: true },
  })
  expect((await ask(app, '/upkeep')).body).toMatchObject({ tasks: [], proposals: expect.any(Array) })
})

test('who has claimed a pour stands on Today', async () => {
  const { app, book } = await served()
  await book.put({
    id: testId(20),
    at: '2026-03-03T09:59:00Z',
    kind: 'signoff',
    sump: 's1',
    claim: 'pour:s1',
    step: 'claimed',
    by: 'anna',
  })
  expect((await ask(app, '/today')).body).toMatchObject({
    items: [{ sump: 's1', claimedBy: { by: 'anna', person: null } }],
  })
})

test('who is first with a pour holds it, whoever comes later stands beside it, and the pour ends it', async () => {
  const { app } = await served()
  const put = (n: number, at: string, entry: object) =>
    app.inject({
      method: 'PUT',
      url: `/api/v1/entries/${testId(n)}`,
      payload: { id: testId(n), at, sump: 's1', ...entry },
    })
  const claim = { kind: 'signoff', claim: 'pour:s1', step: 'claimed' }
  await put(10, '2026-03-03T09:50:00.000Z', { ...claim, by: 'RK' })
  await put(11, '2026-03-03T09:51:00.000Z', { ...claim, by: 'MS' })
  expect((await ask(app, '/claims')).body).toMatchObject({
    claims: [{ key: 'pour:s1', by: 'RK', lost: [{ by: 'MS' }], until: '2026-03-03T10:20:00.000Z' }],
  })
  await put(12, '2026-03-03T09:58:00.000Z', { kind: 'addition', volume: 38, strength: 18.2, by: 'RK' })
  expect((await ask(app, '/claims')).body).toEqual({ claims: [] })
})
