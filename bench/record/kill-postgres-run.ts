import { setTimeout as delay } from 'node:timers/promises'
import type { StorePlace } from '@sumpbook/book'
import type { PostgresServer } from '../../tests/postgres/start.ts'
import { checkBook } from './check-book.ts'
import { argsOf, type KillFigures } from './kill-server-run.ts'
import { nothingSent, sendOpen, sendUntil } from './load.ts'
import { startServer } from './server-process.ts'

/**
 * Two servers of one book under load, and the database under them killed (`SIGKILL`, all its processes) at moments by chance and started
 * again. The servers go on by themselves, without a restart.
 */
export async function killPostgresRun(
  database: PostgresServer,
  schema: string,
  { times, longestMs = 400 }: { times: number; longestMs?: number },
): Promise<KillFigures & { refusedMeanwhile: number }> {
  const place: StorePlace = { kind: 'postgres', url: database.url, schema }
  const sent = nothingSent()
  const servers = [await startServer(argsOf(place)), await startServer(argsOf(place))]
  let [sentAgain, refusedMeanwhile] = [0, 0]
  try {
    for (let kill = 0; kill < times; kill++) {
      let killed = false
      const load = Promise.all(servers.map(({ address }) => sendUntil(address, sent, () => killed, 3)))
      await delay(50 + Math.random() * longestMs)
      await database.kill()
      killed = true
      await load
      const { status } = await fetch(`${servers[0]!.address}/readyz`)
      if (status === 503) refusedMeanwhile += 1
      await database.restart()
      sentAgain += sent.open.size
      for (let tries = 0; !(await sendOpen(servers[kill % 2]!.address, sent)); tries++) {
        if (tries === 600) throw new Error('the server does not come back after its database')
        await delay(50)
      }
    }
  } finally {
    await Promise.all(servers.map((server) => server.stop()))
  }
  const fate = await checkBook(place, sent)
  return { kills: times, acknowledged: sent.acknowledged.size, sentAgain, refusedMeanwhile, ...fate }
}
