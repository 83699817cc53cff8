import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'
import { openPeople } from '../people/people.ts'
import { asker, firstOwner, invited, password } from '../people/testing.ts'

/** A served book that keeps its log lines. */
async function loggingApp(level: 'info' | 'warn' = 'info') {
  const lines: string[] = []
  const book = openBook(await openSqliteStore(inMemory), () => new Date())
  const people = await openPeople(book.store)
  const stream = { write: (line: string) => void lines.push(line) }
  const app = await buildApp({ book, people, accounts: true, version: '0.0.0-test', logger: { level, stream } })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  return { app, people, lines, clock: null as never }
}

test('a request is one line: number, method, route, status, milliseconds, and the person by id', async () => {
  const served = await loggingApp()
  const owner = await firstOwner(served)
  const { id } = (await owner('GET', '/session')).json().person
  served.lines.length = 0
  await owner('GET', '/sumps/no-such-sump')
  expect(served.lines).toHaveLength(1)
  expect(JSON.parse(served.lines[0]!)).toMatchObject({
    reqId: expect.stringMatching(/\S/),
    method: 'GET',
    route: '/api/v1/sumps/:id',
    status: 404,
    ms: expect.any(Number),
    person: id,
    msg: 'answered',
  })
})

test('no password, code, PIN, token, cookie, name or body is in the log, whatever goes wrong', async () => {
  const served = await loggingApp()
  const { app, lines } = served
  const owner = await firstOwner(served)
  const { ask: ben } = await invited(served, owner, {
    name: 'Benedikta Vogelsang',
    role: 'operator',
    login: 'bv-login',
  })
  const { token } = (await ben('POST', '/me/tokens', { name: 'script', scopes: ['write'], days: 1 })).json()
  expect(token.length).toBeGreaterThan(20)
  await ben('PUT', '/me/pin', { pin: '774411', password })
  const secret = 'Zt9-not-for-logs'
  await asker(app)('POST', '/session', { login: 'bv-login', password: secret })
  await asker(app, { authorization: `Bearer ${secret}` })('GET', '/book')
  await app.inject({ url: `/api/v1/book?token=${secret}`, headers: { cookie: `session_token=${secret}` } })
  await app.inject({ url: `/api/v1/${secret}`, headers: { 'user-agent': secret, referer: `https://x/${secret}` } })
  const entry = { id: '00000000-0000-4000-8000-000000000001', at: 'never', kind: 'reading', note: secret }
  await asker(app, { authorization: `Bearer ${token}` })('PUT', `/entries/${entry.id}`, entry)
  await app.inject({
    method: 'PUT',
    url: `/api/v1/entries/${entry.id}`,
    headers: { 'content-type': 'application/json', authorization: `Bearer ${token}` },
    payload: `{"note": "${secret}`,
  })
  expect(lines.length).toBeGreaterThan(10)
  const log = lines.join('')
  const hidden = [
    secret,
    password,
    token,
    '774411',
    'Benedikta',
    'bv-login',
    'Ada Owner',
    ...owner
      .cookies()
      .split(/[=;]\s?/)
      .filter((part) => part.length > 30),
  ]
  expect(hidden.length).toBeGreaterThan(7)
  expect(hidden.filter((text) => log.includes(text))).toEqual([])
})

test('with `warn` a request that went as it should leaves no line', async () => {
  const { app, lines } = await loggingApp('warn')
  await app.inject('/livez')
  await app.inject('/api/v1/book')
  expect(lines).toEqual([])
})
