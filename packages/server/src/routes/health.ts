import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'

/** Whether the process lives, and whether it can work: its store answers. */
export function healthRoutes(app: FastifyInstance, book: Book): void {
  app.get('/livez', { schema: { hide: true } }, () => ({ status: 'ok' }))
  app.get('/readyz', { schema: { hide: true } }, async () => {
    const { seq } = await book.store.head()
    return { status: 'ok', seq }
  })
}
