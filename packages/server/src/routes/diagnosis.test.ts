import { inMemory, openBook, openSqliteStore, sourceOf } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

const now = new Date('2026-03-31T10:00:00.000Z')
const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { ph: { low: 8.5 } } }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [
    { id: id(1), at: '2026-03-28T09:30:00+01:00', kind: 'reading', sump: 's1', ph: 8.1 },
    { id: id(2), at: '2026-03-29T09:30:00+02:00', kind: 'observation', sump: 's1', signs: ['rancid smell'] },
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

test('a sump’s diagnosis comes with its reasons, what must stop, and what it was weighed from', async () => {
  const answer = await (await shopApp()).inject('/api/v1/sumps/s1/diagnosis')
  expect(answer.statusCode).toBe(200)
  const body = answer.json()
  expect(body.causes[0]).toMatchObject({ cause: 'bacterial growth' })
  expect(body.stop[0]).toContain('Dose nothing')
  expect(body.symptoms).toMatchObject({ readings: { ph: 8.1 }, signs: ['rancid smell'] })
})

test('at an earlier time only what was written by then counts', async () => {
  const answer = await (await shopApp()).inject('/api/v1/sumps/s1/diagnosis?at=2026-03-28T12:00:00Z')
  expect(answer.json().symptoms.signs).toEqual([])
})

test('a sump that is not there, and a question that is none, are refused', async () => {
  const app = await shopApp()
  expect((await app.inject('/api/v1/sumps/s9/diagnosis')).statusCode).toBe(404)
  expect((await app.inject('/api/v1/sumps/s1/diagnosis?when=now')).statusCode).toBe(400)
})

test('the list of signs is served for who writes observations', async () => {
  const { families, signs } = (await (await shopApp()).inject('/api/v1/signs')).json()
  expect(families[0]).toEqual({ id: 'look', name: 'Look of the fluid' })
  expect(signs.find((sign: { id: string }) => sign.id === 'cough or chest tightness')).toMatchObject({
    family: 'people',
    stop: true,
  })
  expect(signs.find((sign: { id: string }) => sign.id === 'foam').stop).toBe(false)
})

test('its questions are in the language of whoever asks, its words for entries in no other', async () => {
  const app = await shopApp()
  const answer = await app.inject({ url: '/api/v1/signs', headers: { 'accept-language': 'de' } })
  expect(answer.json().families[1]).toEqual({ id: 'smell', name: 'Geruch' })
  expect(answer.json().signs.find((sign: { id: string }) => sign.id === 'sour smell')).toMatchObject({
    question: 'Sauer oder muffig?',
    also: ['sour', 'musty smell', 'musty'],
  })
})
