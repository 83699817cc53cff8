import { inMemory, openBook, openSqliteStore, openStore, type StorePlace } from '@sumpbook/book'
import type { FastifyInstance, InjectOptions, LightMyRequestResponse } from 'fastify'
import { expect, onTestFinished } from 'vitest'
import { buildApp } from '../app.ts'
import { openPeople, type People } from './people.ts'
import type { PeopleSettings } from './people-parts.ts'
import type { Role } from './roles.ts'

/** A clock that tests turn. */
export function testClock(start = '2026-03-03T10:00:00.000Z') {
  let now = Date.parse(start)
  return {
    now: () => new Date(now),
    pass: (ms: number) => {
      now += ms
    },
  }
}

export interface PeopledApp {
  app: FastifyInstance
  people: People
  clock: ReturnType<typeof testClock>
}

/** A served book in which accounts are needed. */
export async function peopledApp(
  settings: PeopleSettings & { place?: StorePlace; clock?: never; accounts?: boolean } = {},
): Promise<PeopledApp> {
  // The library goes by the machine's clock: sessions begin now.
  const clock = testClock(new Date().toISOString())
  const { place, accounts = true, ...rest } = settings
  const store = place === undefined ? await openSqliteStore(inMemory) : await openStore(place)
  const book = openBook(store, clock.now)
  const people = await openPeople(store, { ...rest, clock: clock.now })
  const app = await buildApp({ book, people, accounts, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return { app, people, clock }
}

export const password = 'slow grey heron 7'
const cookiesOf = (answer: LightMyRequestResponse) =>
  answer.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`)

/** A way to ask as somebody. */
export type Ask = (
  method: string,
  path: string,
  body?: unknown,
  headers?: Record<string, string>,
) => Promise<LightMyRequestResponse>

/** Asks below `/api/v1` with what a browser would have kept. */
export function asker(app: FastifyInstance, kept: Record<string, string> = {}): Ask & { cookies(): string } {
  const jar = new Map<string, string>()
  const cookies = () => [...jar].map(([name, value]) => `${name}=${value}`).join('; ')
  const ask: Ask = async (method, path, body, headers = {}) => {
    const answer = await app.inject({
      method: method as NonNullable<InjectOptions['method']>,
      url: `/api/v1${path}`,
      headers: { ...kept, ...(jar.size === 0 ? {} : { cookie: cookies() }), ...headers },
      ...(body === undefined ? {} : { payload: body as object }),
    })
    for (const pair of cookiesOf(answer)) {
      const [name, value] = [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)]
      if (value === '') jar.delete(name)
      else jar.set(name, value)
    }
    return answer
  }
  return Object.assign(ask, { cookies })
}

/** The first owner, signed in. */
export async function firstOwner({ app, people }: PeopledApp): Promise<ReturnType<typeof asker>> {
  const ask = asker(app)
  const { code } = (await people.firstRunCode())!
  const chosen = { code, name: 'Ada Owner', login: 'ada', password }
  const answer = await ask('POST', '/session/first-run', chosen)
  expect(answer.statusCode).toBe(201)
  return ask
}

/** Somebody whom the owner invited, signed in. */
export async function invited(
  { app }: PeopledApp,
  owner: Ask,
  { name, role, login = name.toLowerCase() }: { name: string; role: Role; login?: string },
): Promise<{ ask: ReturnType<typeof asker>; id: string }> {
  const { id, code } = (await owner('POST', '/people', { name, role })).json()
  const ask = asker(app)
  expect((await ask('POST', '/session/join', { code, login, password })).statusCode).toBe(201)
  return { ask, id }
}
