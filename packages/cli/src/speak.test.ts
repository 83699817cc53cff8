import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { openBook, openStore, type Today } from '@sumpbook/book'
import { buildApp } from '@sumpbook/server'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { main } from './main.ts'
import { filePlace } from './settings.ts'

const shop = {
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
const at = '2026-03-03T10:00:00Z'

const folder = mkdtempSync(join(tmpdir(), 'sumpbook-cli-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
beforeAll(async () => {
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(shop))
  expect((await run(folder, ['import', join(folder, 'shop.json')])).code).toBe(0)
})

async function run(cwd: string, args: string[], env: Record<string, string> = {}) {
  const said = { out: '', err: '' }
  const sink = (name: 'out' | 'err') =>
    new Writable({
      write(chunk: Buffer, _, done) {
        said[name] += chunk.toString()
        done()
      },
    })
  const code = await main(args, {
    env,
    stdin: Readable.from([]),
    stdout: sink('out'),
    stderr: sink('err'),
    cwd: () => cwd,
  })
  return { code, ...said }
}

test.each(['de', 'es'])('in %s a command says word for word what the API says', async (language) => {
  const book = openBook(await openStore(filePlace(join(folder, 'data'))), () => new Date(at))
  const app = await buildApp({ book, version: '0.0.0-test' })
  const url = `/api/v1/today?at=${at}`
  const answer = (await app.inject({ url, headers: { 'accept-language': language } })).json() as Today
  const english = (await app.inject({ url })).json() as Today
  await app.close()
  await book.close()
  const { out } = await run(folder, ['today', '--at', at, '--language', language])
  const sentences = ({ lede, items }: Today) => [
    lede,
    ...items.flatMap(({ words, why }) => [words.headline, words.how, words.outcome, why]),
  ]
  const said = sentences(answer).filter((sentence) => sentence !== '')
  expect(said.length).toBeGreaterThan(3)
  expect(said.filter((sentence) => !out.includes(sentence))).toEqual([])
  expect(said.filter((sentence) => sentences(english).includes(sentence))).toEqual([])
})

test('flag, environment and settings file say the language, the nearest first', async () => {
  writeFileSync(join(folder, 'sumpbook.json'), JSON.stringify({ language: 'es' }))
  onTestFinished(() => rmSync(join(folder, 'sumpbook.json')))
  const said = async (args: string[], env: Record<string, string> = {}) =>
    (await run(folder, ['today', '--at', at, ...args], env)).out
  const [english, german, spanish] = [
    await said(['--language', 'en']),
    await said(['--language', 'de']),
    await said(['--language', 'es']),
  ]
  expect(new Set([english, german, spanish]).size).toBe(3)
  expect(await said([])).toBe(spanish)
  expect(await said([], { SUMPBOOK_LANGUAGE: 'de' })).toBe(german)
  expect(await said(['--language', 'en'], { SUMPBOOK_LANGUAGE: 'de' })).toBe(english)
})

test('figures follow the language unless they are asked for otherwise', async () => {
  const said = async (...args: string[]) => (await run(folder, ['today', '--at', at, ...args])).out
  expect(await said('--language', 'de')).toMatch(/\d,\d %/)
  expect(await said('--language', 'de', '--numbers', 'de-CH')).toMatch(/\d\.\d %/)
  expect(await said('--numbers', 'es')).toMatch(/\d,\d %/)
})

test('a language that is not spoken and figures that no standard knows are refused', async () => {
  const refused = await run(folder, ['today', '--language', 'la'])
  expect(refused).toMatchObject({ code: 2, out: '', err: 'language: found "la", expected en, de, es\n' })
  const figures = await run(folder, ['today', '--numbers', 'C@posix'])
  expect(figures).toMatchObject({ code: 2, out: '' })
  expect(figures.err).toContain('numbers: found "C@posix"')
})
