import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'

async function appWithFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-attachments-'))
  const book = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00Z'))
  const app = await buildApp({ book, version: '0.0.0-test', folder })
  onTestFinished(async () => {
    await app.close()
    await book.close()
    rmSync(folder, { recursive: true })
  })
  return { app, attachments: join(folder, 'attachments') }
}
const picture = Buffer.from('\xff\xd8\xff\xe0 a picture', 'latin1')
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const address = (name: string) => `/api/v1/attachments/${name}`

test('a picture is kept once, and given back as it is: 201, 200, then its bytes', async () => {
  const { app, attachments } = await appWithFolder()
  const url = address(sha256(picture))
  const headers = { 'content-type': 'image/jpeg' }
  expect((await app.inject({ method: 'PUT', url, payload: picture, headers })).statusCode).toBe(201)
  expect((await app.inject({ method: 'PUT', url, payload: picture, headers })).statusCode).toBe(200)
  expect(readdirSync(attachments)).toEqual([sha256(picture)])
  const answer = await app.inject(url)
  expect(answer.rawPayload).toEqual(picture)
  expect(answer.headers).toMatchObject({
    'content-type': 'image/jpeg',
    'content-length': '14',
    'x-content-type-options': 'nosniff',
    'content-security-policy': expect.stringContaining('sandbox'),
    'cache-control': expect.stringContaining('private'),
  })
})

test('HEAD says whether it is there, without its bytes', async () => {
  const { app } = await appWithFolder()
  const url = address(sha256(picture))
  expect((await app.inject({ method: 'HEAD', url })).statusCode).toBe(404)
  await app.inject({ method: 'PUT', url, payload: picture })
  const answer = await app.inject({ method: 'HEAD', url })
  expect([answer.statusCode, answer.headers['content-length'], answer.rawPayload.length]).toEqual([200, '14', 0])
})

test.each([
  ['bytes under another name', address('0'.repeat(64)), picture, 422],
  ['a way out of the folder', address('..%2Fbook.sqlite'), picture, 422],
  ['a page called a picture', address(sha256(Buffer.from('<html>'))), Buffer.from('<html>'), 422],
  ['nothing', address(sha256(Buffer.alloc(0))), Buffer.alloc(0), 422],
  ['more than the limit', address('0'.repeat(64)), Buffer.alloc(10 * 1024 * 1024 + 1), 413],
])('%s is refused as a problem, and nothing is kept', async (_, url, payload, status) => {
  const { app, attachments } = await appWithFolder()
  const answer = await app.inject({ method: 'PUT', url, payload, headers: { 'content-type': 'image/jpeg' } })
  expect(answer.statusCode).toBe(status)
  expect(answer.headers['content-type']).toContain('application/problem+json')
  expect(() => readdirSync(attachments)).toThrow()
})

test('what the sender calls it does not count: JSON that is a picture is a picture', async () => {
  const { app } = await appWithFolder()
  const headers = { 'content-type': 'application/json' }
  const answer = await app.inject({ method: 'PUT', url: address(sha256(picture)), payload: picture, headers })
  expect(answer.statusCode).toBe(201)
})
