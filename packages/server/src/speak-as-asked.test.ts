import type { AddressInfo } from 'node:net'
import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { type Speech, speech } from '@sumpbook/fluid'
import Fastify, { type FastifyInstance } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from './app.ts'
import { speakAsAsked, speechOf } from './speak-as-asked.ts'

const book = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [
    {
      id: '00000000-0000-4000-8000-000000000001',
      at: '2026-03-03T09:30:00+01:00',
      kind: 'reading',
      sump: 's1',
      brix: 3.5,
      volume: 162,
    },
  ],
}

async function shopApp(speech?: Speech): Promise<FastifyInstance> {
  const opened = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00.000Z'))
  const app = await buildApp({ book: opened, version: '0.0.0-test', ...(speech === undefined ? {} : { speech }) })
  onTestFinished(async () => {
    await app.close()
    await opened.close()
  })
  const part = (head: string, body: string) => `--edge\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  const brought = await app.inject({
    method: 'POST',
    url: '/api/v1/import',
    headers: { 'content-type': 'multipart/form-data; boundary=edge' },
    payload: `${part('name="map"', '{}')}${part('name="file"; filename="book.json"', JSON.stringify(book))}--edge--\r\n`,
  })
  expect(brought.statusCode).toBe(200)
  return app
}

/** How the first line of the list is to be done, as it is answered in a language. */
async function toDo(app: FastifyInstance, headers: Record<string, string>): Promise<string> {
  const { items } = (await app.inject({ url: '/api/v1/today', headers })).json()
  return `${items[0].words.headline} ${items[0].words.how} ${items[0].why}`
}

test('two who ask at once are each answered in their own language', async () => {
  const app = await shopApp()
  const languages = ['en', 'de', 'es', 'de', 'en', 'es']
  const said = await Promise.all(languages.map((language) => toDo(app, { 'accept-language': language })))
  const [english, inGerman, inSpanish, ...again] = said
  expect(new Set([english, inGerman, inSpanish]).size).toBe(3)
  expect(again).toEqual([inGerman, english, inSpanish])
  // Words of docs/translating.md.
  expect(english).toMatch(/\bat\b/)
  expect(inGerman).toMatch(/\bmit\b/)
  expect(inSpanish).toMatch(/\bal\b/)
})

test('who names no language that is spoken here is answered in English, or as the server was started', async () => {
  const app = await shopApp()
  const english = await toDo(app, {})
  for (const header of ['fr, pt;q=0.5', '*', 'de;q=0', ';;,', 'Deutsch']) {
    expect(await toDo(app, { 'accept-language': header })).toBe(english)
  }
  const inGerman = await toDo(app, { 'accept-language': 'fr, de-AT;q=0.5, en;q=0.3' })
  expect(inGerman).not.toBe(english)
  const german = await shopApp({ language: 'de', numbers: 'de' })
  expect(await toDo(german, {})).toBe(inGerman)
  expect(await toDo(german, { 'accept-language': 'en' })).toBe(english)
})

test('signs of figures and units are asked for apart from the language', async () => {
  const app = await shopApp()
  const english = await toDo(app, { 'accept-language': 'en' })
  expect(english).toMatch(/\d\.\d/)
  const commas = await toDo(app, { 'accept-language': 'en', 'sumpbook-figures': 'numbers=de-DE' })
  expect(commas.replaceAll(/(\d),(\d)/g, '$1.$2')).toBe(english)
  expect(commas).toMatch(/\d,\d/)
  const gallons = await toDo(app, { 'accept-language': 'de', 'sumpbook-figures': 'numbers=en, units=us' })
  expect(gallons).toMatch(/\d gal\b/)
  expect(gallons).not.toMatch(/\d L\b/)
  // The question's own units are nearer than those of the one who asks.
  const asked = await app.inject({ url: '/api/v1/today?units=metric', headers: { 'sumpbook-figures': 'units=us' } })
  expect(asked.json().items[0].words.headline).toMatch(/\d L\b/)
})

test('what is said after a body was read is said in the same language', async () => {
  const app = Fastify()
  onTestFinished(() => app.close())
  speakAsAsked(app)
  app.post('/said', () => speech().language)
  await app.listen({ host: '127.0.0.1', port: 0 })
  const { port } = app.server.address() as AddressInfo
  // A body that comes piece by piece, through the network.
  const say = async (language: string) => {
    const body = new ReadableStream({
      async start(controller) {
        for (const piece of ['{"a":', '1', '}']) {
          controller.enqueue(new TextEncoder().encode(piece))
          await new Promise((resolve) => setTimeout(resolve, 5))
        }
        controller.close()
      },
    })
    const headers = { 'accept-language': language, 'content-type': 'application/json' }
    const init = { method: 'POST', headers, body, duplex: 'half' }
    return (await fetch(`http://127.0.0.1:${port}/said`, init as RequestInit)).text()
  }
  expect(await Promise.all(['de', 'es', 'en', 'de'].map(say))).toEqual(['de', 'es', 'en', 'de'])
})

test('answers say what they depend on, and the description how to ask', async () => {
  const app = await shopApp()
  const { headers } = await app.inject({ url: '/api/v1/book', headers: { 'accept-language': 'es-MX' } })
  expect(headers).toMatchObject({ 'content-language': 'es', vary: 'Accept-Language, Sumpbook-Figures' })
  const description = (await app.inject('/api/openapi.json')).json()
  const named = description.paths['/api/v1/today'].get.parameters.map(({ name }: { name: string }) => name)
  expect(named).toEqual(expect.arrayContaining(['accept-language', 'sumpbook-figures']))
})

test('figures follow the form of the language that was asked for', () => {
  // CLDR: Swiss German has a point and an apostrophe.
  expect(speechOf({ 'accept-language': 'de-CH, de;q=0.9' })).toEqual({ language: 'de', numbers: 'de-CH' })
  expect(speechOf({ 'accept-language': 'xx, es' })).toEqual({ language: 'es', numbers: 'es' })
  expect(speechOf({ 'accept-language': 'de', 'sumpbook-figures': 'numbers=C@posix, units=pints' })).toEqual({
    language: 'de',
    numbers: 'de',
  })
})
