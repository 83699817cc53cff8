import { type Book, inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test, vi } from 'vitest'
import { buildApp } from './app.ts'

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
  const { app, times } = await settlingApp(30)
  await app.inject('/api/v1/today')
  for (const n of [1, 2, 3])
    await app.inject({ method: 'PUT', url: `/api/v1/entries/${reading(n).id}`, payload: reading(n) })
  expect(times()).toBe(0)
  await vi.waitFor(() => expect(times()).toBe(1))
  await new Promise((resolve) => setTimeout(resolve, 60))
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
