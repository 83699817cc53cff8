import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import type { InjectOptions } from 'fastify'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from './app.ts'

async function served(more: { https?: boolean; webRoot?: string } = {}) {
  const book = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00Z'))
  const app = await buildApp({ book, version: '0.0.0-test', ...more })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return app
}

test.each(['/livez', '/api/v1/book', '/api/v1/nothing', '/api/openapi.json', '/nothing.js'])(
  'every answer bounds what a browser does with it: %s',
  async (url) => {
    const { headers } = await (await served()).inject(url)
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
    })
    const policy = String(headers['content-security-policy'])
    for (const part of ["default-src 'self'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"]) {
      expect(policy).toContain(part)
    }
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|upgrade-insecure-requests|\*/)
    expect(headers['access-control-allow-origin']).toBe(undefined)
    expect(headers['x-powered-by'] ?? headers.server).toBe(undefined)
  },
)

test('worker and manifest come from the server itself', async () => {
  const policy = String((await (await served()).inject('/livez')).headers['content-security-policy'])
  expect(policy).toMatch(/worker-src 'self'(;|$)/)
  expect(policy).toMatch(/manifest-src 'self'(;|$)/)
})

test('the worker, the manifest and the page are asked for anew each time; what carries its hash in its name is kept', async () => {
  const webRoot = mkdtempSync(join(tmpdir(), 'sumpbook-web-'))
  onTestFinished(() => rmSync(webRoot, { recursive: true }))
  mkdirSync(join(webRoot, 'assets'))
  for (const file of ['index.html', 'sw.js', 'manifest.webmanifest', 'assets/app-1a2b.js'])
    writeFileSync(join(webRoot, file), '')
  const app = await served({ webRoot })
  const control = async (url: string) => (await app.inject(url)).headers['cache-control']
  for (const url of ['/', '/round/s1', '/sw.js', '/manifest.webmanifest']) expect(await control(url)).toBe('no-cache')
  expect(await control('/assets/app-1a2b.js')).toBe('public, max-age=31536000, immutable')
  expect((await app.inject('/manifest.webmanifest')).headers['content-type']).toMatch(/^application\/manifest\+json/)
})

test('what was built goes out compressed to whoever takes that, the page at any address too', async () => {
  const webRoot = mkdtempSync(join(tmpdir(), 'sumpbook-web-'))
  onTestFinished(() => rmSync(webRoot, { recursive: true }))
  writeFileSync(join(webRoot, 'index.html'), '<p>Sumps</p>')
  writeFileSync(join(webRoot, 'index.html.gz'), gzipSync('<p>Sumps</p>'))
  const app = await served({ webRoot })
  for (const url of ['/', '/round/s1']) {
    const short = await app.inject({ url, headers: { 'accept-encoding': 'gzip' } })
    expect(short.headers).toMatchObject({ 'content-encoding': 'gzip', 'content-type': 'text/html; charset=utf-8' })
    expect(short.headers.vary).toMatch(/accept-encoding/i)
    expect(gunzipSync(short.rawPayload).toString()).toBe('<p>Sumps</p>')
    const { headers, payload } = await app.inject(url)
    expect([headers['content-encoding'], payload]).toEqual([undefined, '<p>Sumps</p>'])
  }
})

test('a long answer of the API goes out compressed to whoever takes that, and no body that comes in is unfolded', async () => {
  const app = await served()
  const long = await app.inject({ url: '/api/openapi.json', headers: { 'accept-encoding': 'gzip, deflate, br' } })
  expect(long.headers['content-encoding']).toBe('gzip')
  expect(JSON.parse(gunzipSync(long.rawPayload).toString())).toEqual((await app.inject('/api/openapi.json')).json())
  const folded = await app.inject({
    method: 'POST',
    url: '/api/v1/entries',
    headers: { 'content-type': 'application/json', 'content-encoding': 'gzip' },
    payload: gzipSync('[]'),
  })
  expect(folded.statusCode).toBe(400)
})

test('browsers are told to insist on https where the book is reached by it alone, and only there', async () => {
  expect((await (await served()).inject('/livez')).headers['strict-transport-security']).toBe(undefined)
  const { headers } = await (await served({ https: true })).inject('/livez')
  expect(headers['strict-transport-security']).toBe('max-age=31536000')
})

test('what the API answers is kept by no browser', async () => {
  const app = await served()
  for (const url of ['/api/v1/book', '/api/v1/entries', '/api/v1/nothing']) {
    expect((await app.inject(url)).headers['cache-control']).toBe('no-store')
  }
})

test.each(['TRACE', 'CONNECT', 'PROPFIND'])('%s is nothing the server does', async (method) => {
  const answer = await (await served()).inject({
    method: method as NonNullable<InjectOptions['method']>,
    url: '/api/v1/book',
  })
  expect(answer.statusCode).toBeGreaterThanOrEqual(400)
  expect(answer.statusCode).toBeLessThan(500)
})

test.each([
  '/.git/config',
  '/package.json',
  '/..%2f..%2fpackage.json',
  '/api/v1/attachments/..%2f..%2fpackage.json',
  '/data/book.sqlite',
])('no file beside the app is given out: %s', async (url) => {
  const answer = await (await served()).inject(url)
  expect(answer.statusCode).toBe(404)
  expect(answer.body).not.toContain('sumpbook-book')
})

test('an error nobody foresaw says nothing of its inside', async () => {
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => new Date('2026-03-03T10:00:00Z'))
  const broken = { ...book, sumps: () => Promise.reject(new Error('select * from secret_table at /srv/app.ts:12')) }
  const app = await buildApp({ book: broken, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const answer = await app.inject('/api/v1/sumps')
  expect(answer.statusCode).toBe(500)
  expect(answer.body).not.toMatch(/secret_table|app\.ts|select/)
})
