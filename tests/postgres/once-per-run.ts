import { createServer } from 'node:net'
import type { TestProject } from 'vitest/node'
import { type PostgresServer, startPostgres } from './start.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Whoever connects to this port of loopback is told the address of the run's PostgreSQL server, or why there is none. */
    postgresDoor: number
  }
}

/**
 * One PostgreSQL server a run, started when the first test asks for it and stopped after the last: a run that asks for
 * none starts none. `SUMPBOOK_TEST_DATABASE_URL` names another server instead, of another version say; the tests make and drop
 * schemas of their own there.
 */
export default async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  const own = process.env.SUMPBOOK_TEST_DATABASE_URL
  let server: Promise<Pick<PostgresServer, 'url' | 'stop'>> | null = null
  const door = createServer((caller) => {
    caller.on('error', () => {})
    server ??= own === undefined ? startPostgres() : Promise.resolve({ url: own, stop: async () => {} })
    server.then(
      ({ url }) => caller.end(JSON.stringify({ url })),
      (error: unknown) => caller.end(JSON.stringify({ error: String(error) })),
    )
  })
  await new Promise<void>((resolve) => door.listen(0, '127.0.0.1', resolve))
  provide('postgresDoor', (door.address() as { port: number }).port)
  return async () => {
    await new Promise((resolve) => door.close(resolve))
    await (await server?.catch(() => null))?.stop()
  }
}
