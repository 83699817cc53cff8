import { type Book, BookError } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { problemOf, sendProblem } from '../problems.ts'

/** A store that says nothing for this long is out of reach. */
const patienceMs = 2000

/** Whether the process lives, and whether it can work: its store answers. */
export function healthRoutes(app: FastifyInstance, book: Book): void {
  app.get('/livez', { schema: { hide: true } }, () => ({ status: 'ok' }))
  app.get('/readyz', { schema: { hide: true } }, async (request, reply) => {
    try {
      const { seq } = await withinTime(book.store.head())
      return { status: 'ok', seq }
    } catch (error) {
      request.log.warn(error)
      const out = new BookError('store-out-of-reach', 'The store of the book does not answer.')
      return sendProblem(reply, problemOf(out))
    }
  })
}

async function withinTime<T>(answer: Promise<T>): Promise<T> {
  const late = Promise.withResolvers<never>()
  const timer = setTimeout(() => late.reject(new Error(`the store said nothing for ${patienceMs} ms`)), patienceMs)
  try {
    return await Promise.race([answer, late.promise])
  } finally {
    clearTimeout(timer)
  }
}
