import { type Book, inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import Fastify from 'fastify'
import { expect, onTestFinished, test, vi } from 'vitest'
import { buildApp } from './app.ts'
import { settleLater } from './settle-later.ts'

async function settlingApp(settleAfterMs: number) {
  const book = openBook(await openSqliteStore(inMemory), () => new Date('2026-03-03T10:00:00Z'))
  let settled = 0
  const counted: Book = {
    ...book,
    settle: () => {
      settled += 1
      return book.settle()
    },
  }
  const app = await buildApp({ book: counted, version: '0.0.0-test', settleAfterMs })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return { app, times: () => settled }
}

const reading = (n: number) => ({
  id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-03-03T09:30:00Z',
  kind: 'reading',
  sump: 's1',
  brix: 5,
})

test('writes are settled once, some time after the first of them; questions settle nothing', async () => {
  const { app, times } = await settlingApp(500)
  await app.inject('/api/v1/today')
  for (const n of [1, 2, 3])
    await app.inject({ method: 'PUT', url: `/api/v1/entries/${reading(n).id}`, payload: reading(n) })
  expect(times()).toBe(0)
  await vi.waitFor(() => expect(times()).toBe(1), 10_000)
  await new Promise((resolve) => setTimeout(resolve, 600))
  expect(times()).toBe(1)
})

test('a write that was refused settles nothing', async () => {
  const { app, times } = await settlingApp(5)
  const wrong = { ...reading(1), brix: 300 }
  expect((await app.inject({ method: 'PUT', url: `/api/v1/entries/${wrong.id}`, payload: wrong })).statusCode).toBe(422)
  await new Promise((resolve) => setTimeout(resolve, 30))
  expect(times()).toBe(0)
})

test('a server that is closed settles nothing any more', async () => {
  const { app, times } = await settlingApp(20)
  await app.inject({ method: 'PUT', url: `/api/v1/entries/${reading(1).id}`, payload: reading(1) })
  await app.close()
  await new Promise((resolve) => setTimeout(resolve, 50))
  expect(times()).toBe(0)
})

test('what takes long is done rarely: no more than a hundredth of the time goes into it', async () => {
  const app = Fastify()
  let settled = 0
  const settle = async () => {
    settled += 1
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
  settleLater(app, { settle } as unknown as Book, 1)
  app.put('/', () => 'ok')
  onTestFinished(() => app.close())
  const until = performance.now() + 500
  while (performance.now() < until) {
    await app.inject({ method: 'PUT', url: '/' })
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
  // 20 ms of work, then 2 s of rest: within half a second it is done once.
  expect(settled).toBe(1)
})
