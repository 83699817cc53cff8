import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-31T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', guidance: { pack: 'united-kingdom', edition: 'current' } },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1' }],
  entries: [
    { id: id(1), at: '2026-03-30T08:00:00Z', kind: 'reading', sump: 's1', ph: 9.1, brix: 5 },
    { id: id(2), at: '2026-03-29T08:00:00Z', kind: 'reading', sump: 's1', pending: true, method: 'dip slide' },
  ],
}

async function asked(url: string) {
  const book = openBook(await openSqliteStore(inMemory), () => now)
  const app = await buildApp({ book, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  await book.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(shop))))
  const answer = await app.inject(`/api/v1${url}`)
  return { status: answer.statusCode, body: answer.json() }
}

test('guidance is told with what is chosen and every source', async () => {
  const { status, body } = await asked('/guidance')
  expect(status).toBe(200)
  expect(body.chosen).toMatchObject({ outcome: 'chosen', name: 'United Kingdom: HSE, page current in 2026' })
  expect(body.packs).toHaveLength(3)
})

test('the calendar of the shop and of one sump', async () => {
  expect((await asked('/calendar')).body.sumps).toMatchObject([{ sump: 's1', name: 'Mill 1' }])
  const { body } = await asked('/sumps/s1/calendar')
  expect(body.tests.find((one: { test: string }) => one.test === 'ph')).toMatchObject({ dueOn: '2026-04-06' })
})

test('samples that wait, and what was found of a sump', async () => {
  expect((await asked('/samples')).body.pending).toMatchObject([{ id: id(2), state: 'to-read' }])
  expect((await asked('/sumps/s1/analytes')).body.series).toMatchObject([{ name: 'pH', points: [{ value: 9.1 }] }])
})

test('a time asked for leaves out what came after it', async () => {
  expect((await asked('/samples?at=2026-03-29T07:00:00Z')).body.pending).toEqual([])
})

test.each(['/sumps/nobody/calendar', '/sumps/nobody/analytes'])('%s is not found', async (url) => {
  expect((await asked(url)).status).toBe(404)
})

test.each(['/guidance?pack=germany', '/calendar?at=yesterday', '/samples?sump=s1'])('%s is refused', async (url) => {
  expect((await asked(url)).status).toBe(400)
})
