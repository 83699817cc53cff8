import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'

/** Of a hundred seconds one at most goes into keeping: what is kept of many sumps is large, and nobody is served while it is written. */
const shareOfTime = 0.01

/**
 * Lets the book keep how far its estimate has come, some time after the start and after each write: never inside a write, once for
 * all writes of that time, and the more rarely the longer it takes.
 */
export function settleLater(app: FastifyInstance, book: Book, afterMs: number): void {
  let timer: NodeJS.Timeout | null = null
  let running: Promise<void> | null = null
  let asked = false
  let restsUntil = 0
  const soon = () => {
    if (running !== null) asked = true
    else timer ??= setTimeout(settle, Math.max(afterMs, restsUntil - performance.now())).unref()
  }
  const settle = () => {
    timer = null
    asked = false
    const from = performance.now()
    running = book
      .settle()
      .catch((error: unknown) => app.log.error(error))
      .then(() => {
        const to = performance.now()
        restsUntil = to + (to - from) / shareOfTime
        running = null
        if (asked) soon()
      })
  }
  app.addHook('onListen', async () => soon())
  app.addHook('onResponse', async ({ method }, { statusCode }) => {
    if (method !== 'GET' && method !== 'HEAD' && statusCode < 300) soon()
  })
  app.addHook('onClose', async () => {
    await running
    if (timer !== null) clearTimeout(timer)
  })
}
