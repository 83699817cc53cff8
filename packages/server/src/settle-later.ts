import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'

/**
 * Lets the book keep how far its estimate has come, some time after the start and after each write: never inside a write, and
 * once for all writes of that time.
 */
export function settleLater(app: FastifyInstance, book: Book, afterMs: number): void {
  let timer: NodeJS.Timeout | null = null
  let running: Promise<void> = Promise.resolve()
  const settle = () => {
    timer = null
    running = book.settle().catch((error: unknown) => app.log.error(error))
  }
  const soon = () => {
    timer ??= setTimeout(settle, afterMs).unref()
  }
  app.addHook('onListen', async () => soon())
  app.addHook('onResponse', async ({ method }, { statusCode }) => {
    if (method !== 'GET' && method !== 'HEAD' && statusCode < 300) soon()
  })
  app.addHook('onClose', async () => {
    if (timer !== null) clearTimeout(timer)
    await running
  })
}
