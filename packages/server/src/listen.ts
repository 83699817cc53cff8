import type { FastifyInstance } from 'fastify'

/** Where the server listens; loopback and 7340 unless told otherwise. */
export interface Address {
  host: string
  port: number
}

/**
 * Listens until a signal ends the process: running requests are answered, the book is closed, then it is gone.
 *
 * @returns the address it listens on, for people
 */
export async function listen(
  app: FastifyInstance,
  { host, port }: Address,
  closeBook: () => Promise<void>,
): Promise<string> {
  const address = await app.listen({ host, port })
  let stopping = false
  const stop = async () => {
    if (stopping) return
    stopping = true
    await app.close()
    await closeBook()
    process.exit(0)
  }
  process.on('SIGTERM', stop)
  process.on('SIGINT', stop)
  return address
}
