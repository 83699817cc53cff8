import { type ArrivalNote, type Book, BookError, entryPage } from '@sumpbook/book'
import type { Chance } from '../estimate/simulate/random.ts'
import type { VirtualTime } from './virtual-time.ts'

/** How bad it is: each the chance of one request. */
export interface Weather {
  /** The request never arrives. */
  lost: number
  /** It arrives, and its answer does not. */
  unheard: number
  /** It arrives a second time, later: after what was sent meanwhile. */
  doubled: number
  /** The server fails over it before it has written anything. */
  failed: number
  /** Something on the way answers with a page of its own. */
  portal: number
}

export const fair: Weather = { lost: 0, unheard: 0, doubled: 0, failed: 0, portal: 0 }

/** What is counted, so that a run can show that all of it happened. */
export interface Happened {
  requests: number
  lost: number
  unheard: number
  doubled: number
  failed: number
  kills: number
  held: number
  refused: number
}

interface Parts {
  book: Book
  time: VirtualTime
  chance: Chance
  happened: Happened
  weather(): Weather
  /** How far the clock of whoever asks just now is ahead, ms. */
  clockAhead(): number
}

/** How long a page waits for an answer that does not come. */
const patienceMs = 30_000

/** `fetch` of a phone whose way to a real book is bad. */
export function badFetch({ book, time, chance, happened, weather, clockAhead }: Parts) {
  return async (path: string, { method = 'GET', body }: { method?: string; body?: string } = {}): Promise<Response> => {
    const { lost, unheard, doubled, failed, portal } = weather()
    const ahead = clockAhead()
    happened.requests += 1
    if (chance.happens(lost)) {
      happened.lost += 1
      await time.sleep(chance.between(50, patienceMs))
      throw new TypeError('Failed to fetch')
    }
    await time.sleep(chance.between(5, 2_000))
    if (chance.happens(portal)) return new Response('<html>Welcome</html>', { status: chance.pick([200, 403]) })
    if (chance.happens(failed)) {
      happened.failed += 1
      const status = chance.pick([500, 500, 503, 507])
      return new Response(JSON.stringify({ type: 'urn:sumpbook:failed', title: 'It failed' }), { status })
    }
    if (method === 'PUT' && chance.happens(doubled)) {
      happened.doubled += 1
      time.after(chance.between(10, 60_000), () => answer(book, method, path, body, ahead))
    }
    const answered = await answer(book, method, path, body, ahead)
    if (chance.happens(unheard)) {
      happened.unheard += 1
      await time.sleep(patienceMs)
      throw new TypeError('Failed to fetch')
    }
    await time.sleep(chance.between(5, 2_000))
    return answered
  }
}

/** The two endpoints that sending needs, on the book's own verbs. */
async function answer(
  book: Book,
  method: string,
  path: string,
  body: string | undefined,
  ahead: number,
): Promise<Response> {
  if (method === 'PUT' && path === '/api/v1/entries') {
    const { entries } = JSON.parse(body!) as { entries: unknown[] }
    const note: ArrivalNote = { envelope: { person: null, device: null, clockAheadMs: ahead }, hold: null }
    const results = await book.putMany(
      entries,
      entries.map(() => note),
    )
    return new Response(JSON.stringify({ results }))
  }
  const [, id] = /^\/api\/v1\/entries\/(.+)$/.exec(path)!
  try {
    return new Response(JSON.stringify(await entryPage(book.store, decodeURIComponent(id!))))
  } catch (error) {
    if (!(error instanceof BookError)) throw error
    return new Response(JSON.stringify({ type: 'urn:sumpbook:not-found', title: error.message }), { status: 404 })
  }
}
