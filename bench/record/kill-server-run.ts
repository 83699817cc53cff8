import { setTimeout as delay } from 'node:timers/promises'
import type { StorePlace } from '@sumpbook/book'
import { checkBook, type Fate } from './check-book.ts'
import { nothingSent, sendOpen, sendUntil } from './load.ts'
import { startServer } from './server-process.ts'

/** What many kills came to. */
export interface KillFigures extends Omit<Fate, 'entries'> {
  kills: number
  acknowledged: number
  /** Not answered when the server was killed, sent again afterwards. */
  sentAgain: number
  entries: number
}

export const argsOf = (place: StorePlace): string[] =>
  place.kind === 'file'
    ? ['--data', place.file]
    : place.kind === 'postgres'
      ? ['--database-url', place.url, '--schema', place.schema]
      : []

/**
 * Starts the server, puts it under load and kills it (`SIGKILL`) at a moment by chance, again and again on one book. After each
 * start what was not answered is sent again, as phones do. The book is opened and walked every `checkEvery` kills and at the end.
 */
export async function killServerRun(
  place: StorePlace,
  { times, checkEvery = 50, longestMs = 250 }: { times: number; checkEvery?: number; longestMs?: number },
): Promise<KillFigures> {
  const sent = nothingSent()
  let sentAgain = 0
  for (let kill = 1; kill <= times; kill++) {
    const server = await startServer(argsOf(place))
    sentAgain += sent.open.size
    if (!(await sendOpen(server.address, sent))) throw new Error('the server did not take what was sent again')
    let killed = false
    const load = sendUntil(server.address, sent, () => killed)
    await delay(Math.random() * longestMs)
    await server.kill()
    killed = true
    await load
    if (kill % checkEvery === 0) {
      const fate = await checkBook(place, sent)
      if (fate.lost.length + fate.doubled.length + fate.faults.length > 0) return figures(kill, sent, sentAgain, fate)
    }
  }
  const server = await startServer(argsOf(place))
  sentAgain += sent.open.size
  await sendOpen(server.address, sent)
  await server.stop()
  return figures(times, sent, sentAgain, await checkBook(place, sent))
}

const figures = (kills: number, { acknowledged }: { acknowledged: Set<string> }, sentAgain: number, fate: Fate) => ({
  kills,
  acknowledged: acknowledged.size,
  sentAgain,
  ...fate,
})
