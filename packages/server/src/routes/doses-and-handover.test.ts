import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'
import { firstOwner, invited, peopledApp } from '../people/testing.ts'

const now = new Date('2026-03-03T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const biocide = {
  id: 'b3',
  name: 'Biocide 3',
  kind: 'biocide',
  dose: { low: 1, high: 2, unit: 'mL/L' },
  minimumDays: 7,
}
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric', additives: [biocide] },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [
    { id: id(1), at: '2026-02-25T08:00:00Z', kind: 'charge', sump: 's1', volume: 200, strength: 8 },
    { id: id(2), at: '2026-03-03T08:30:00Z', kind: 'reading', sump: 's1', brix: 5, volume: 190 },
  ],
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

test('a dose is asked for by sump and additive, in the units asked', async () => {
  const app = await shopApp()
  const { statusCode, ...answer } = await app.inject('/api/v1/sumps/s1/dose?additive=b3')
  expect(statusCode).toBe(200)
  const body = answer.json()
  expect(body).toMatchObject({
    sump: 's1',
    isFallUnexplained: false,
    doses: [{ additive: { id: 'b3', who: 'keeper' } }],
  })
  expect(body.doses[0].answer.most).toBeCloseTo(2 * body.volume.low90, 9)
  expect(body.doses[0].mayGive).toBe(true)
  const us = (await app.inject('/api/v1/sumps/s1/dose?units=us')).json()
  expect(us.doses[0].words.headline).toMatch(/fl oz to .* fl oz of Biocide 3 into Mill 1/)
})

test.each([
  ['/api/v1/sumps/none/dose', 404],
  ['/api/v1/sumps/s1/dose?additive=none', 404],
  ['/api/v1/sumps/s1/dose?volume=3', 400],
  ['/api/v1/handover?shift=1', 400],
])('%s is answered with %i', async (path, status) => {
  expect((await (await shopApp()).inject(path)).statusCode).toBe(status)
})

test('the note that might be written and the last notes are asked for at once', async () => {
  const app = await shopApp()
  const note = {
    id: id(9),
    at: '2026-03-02T21:00:00Z',
    kind: 'handover',
    about: { kind: 'shop' },
    text: 'Mill 1 smelled',
  }
  await app.inject({ method: 'PUT', url: `/api/v1/entries/${id(9)}`, payload: note })
  const { proposal, notes } = (await app.inject('/api/v1/handover')).json()
  expect(proposal).toMatchObject({ read: ['Mill 1'], done: [] })
  expect(proposal.text).toContain('Read: 1 sump.')
  expect(notes).toMatchObject([{ entry: id(9), text: 'Mill 1 smelled', readBy: [] }])
})

test('an operator is told the dose and that it is a keeper’s to give', async () => {
  const peopled = await peopledApp()
  const owner = await firstOwner(peopled)
  const of = { kind: 'sump', id: 's1' }
  const made = { at: '2026-03-01T08:00:00Z', kind: 'setup' }
  await owner('PUT', `/entries/${id(21)}`, { id: id(21), ...made, about: of, changes: { name: 'Mill 1', fluid: 'f1' } })
  const changes = { name: 'Test works', additives: [biocide] }
  await owner('PUT', `/entries/${id(22)}`, { id: id(22), ...made, about: { kind: 'shop', id: 'shop' }, changes })
  const operator = await invited(peopled, owner, { name: 'Olaf', role: 'operator' })
  const mayGive = async (ask: typeof owner) => (await ask('GET', '/sumps/s1/dose')).json().doses[0]?.mayGive
  expect([await mayGive(operator.ask), await mayGive(owner)]).toEqual([false, true])
})
