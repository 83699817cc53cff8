/** Who may do what: the table of docs/people.md, asked of a running server, role by role, endpoint by endpoint. */
import { readFileSync } from 'node:fs'
import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { beforeAll, expect, test } from 'vitest'
import { buildApp } from '../app.ts'
import { openPeople } from './people.ts'
import { type Role, roles, type Scope, scopes } from './roles.ts'
import { asker, password } from './testing.ts'

interface Row {
  endpoint: string
  /** `anybody`, or the roles that may. */
  may: readonly (Role | 'anybody')[]
  /** `–` where no token will do. */
  scope: Scope | '–'
}

const page = readFileSync(new URL('../../../../docs/people.md', import.meta.url), 'utf8')

/** "| `GET /book` | yes | yes | yes | yes | read |" */
const rows: Row[] = page
  .split('\n')
  .filter((line) => /^\| `(GET|PUT|POST|DELETE) /.test(line))
  .map((line) => {
    const [endpoint = '', ...cells] = line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim())
    const may = roles.filter((_, n) => cells[n] === 'yes')
    return {
      endpoint: endpoint.replaceAll('`', ''),
      may: cells.slice(0, 4).every((cell) => cell === 'anybody') ? (['anybody'] as const) : may,
      scope: cells[4] as Row['scope'],
    }
  })

let app: FastifyInstance
const asked: Record<string, ReturnType<typeof asker>> = {}
/** A token of the owner for each scope. */
const byScope: Record<string, ReturnType<typeof asker>> = {}
let documented: string[] = []

beforeAll(async () => {
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => new Date())
  // A book that holds something takes no example shop: every request stays small.
  const mill = { kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: { name: 'Mill 1', fluid: 'f1' } }
  await book.put({ id: '00000000-0000-4000-8000-000000000001', at: '2026-03-03T10:00:00Z', ...mill })
  const people = await openPeople(store)
  app = await buildApp({ book, people, accounts: true, version: '0.0.0-test' })
  const owner = asker(app)
  const { code } = (await people.firstRunCode())!
  await owner('POST', '/session/first-run', { code, name: 'Ada', login: 'owner', password })
  for (const role of roles.slice(0, 3)) {
    const invitation = (await owner('POST', '/people', { name: role, role })).json()
    asked[role] = asker(app)
    await asked[role]('POST', '/session/join', { code: invitation.code, login: `a-${role}`, password })
  }
  asked.owner = owner
  asked.anybody = asker(app)
  for (const scope of scopes) {
    const { token } = (await owner('POST', '/me/tokens', { name: scope, scopes: [scope], days: 1 })).json()
    byScope[scope] = asker(app, { authorization: `Bearer ${token}` })
  }
  const { paths } = (await app.inject('/api/openapi.json')).json() as { paths: Record<string, object> }
  documented = Object.entries(paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace(/^\/api\/v1/, '')}`),
  )
}, 120_000)

const rowOf = (endpoint: string) => rows.find((row) => matches(row.endpoint, endpoint))
/** `POST /calc/…` stands for all calculations. */
const matches = (pattern: string, endpoint: string) =>
  pattern.endsWith('…') ? endpoint.startsWith(pattern.slice(0, -1)) : pattern === endpoint

/** A request that changes nothing: nobody and nothing has such an id, and bodies are none. */
function harmless(endpoint: string): [method: string, path: string, body?: unknown] {
  const [method, path] = endpoint.split(' ') as [string, string]
  const filled = path.replaceAll(/\{[^}]+\}/g, 'nothing')
  return method === 'GET' || method === 'DELETE' ? [method, filled] : [method, filled, {}]
}

/** Whether the guard let a request through; what then becomes of it is another matter. */
const isLetIn = ({ statusCode, body }: { statusCode: number; body: string }) =>
  !(
    (statusCode === 401 && body.includes('sign-in-needed')) ||
    (statusCode === 403 && body.includes('This needs the role'))
  )

test('every endpoint of the API has a row, and every row an endpoint', () => {
  expect(documented.length).toBeGreaterThan(40)
  expect(documented.filter((endpoint) => rowOf(endpoint) === undefined)).toEqual([])
  expect(rows.filter(({ endpoint }) => !documented.some((one) => matches(endpoint, one)))).toEqual([])
})

test.each(['anybody', ...roles] as const)('%s is let in where the table says so, and nowhere else', async (who) => {
  const wrong: string[] = []
  for (const endpoint of documented.filter((one) => one !== 'DELETE /session')) {
    const { may } = rowOf(endpoint)!
    const expected = may.includes('anybody') || may.includes(who)
    const answer = await asked[who]!(...harmless(endpoint))
    expect(answer.statusCode, `${endpoint}: ${answer.body}`).toBeLessThan(500)
    if (isLetIn(answer) !== expected) wrong.push(`${who}: ${endpoint} answers ${answer.statusCode}`)
  }
  expect(wrong).toEqual([])
})

test.each(scopes)('an owner’s token to %s is let in where the table says so, and nowhere else', async (scope) => {
  const wrong: string[] = []
  for (const endpoint of documented.filter((one) => one !== 'DELETE /session')) {
    const row = rowOf(endpoint)!
    const answer = await byScope[scope]!(...harmless(endpoint))
    const isIn = isLetIn(answer) && !/This token was not made to|Only somebody who signed in/.test(answer.body)
    if (isIn !== (row.may.includes('anybody') || row.scope === scope)) {
      wrong.push(`${endpoint} answers ${answer.statusCode} ${answer.body}`)
    }
  }
  expect(wrong).toEqual([])
})

test('a role that may less may nothing that the next may not', () => {
  for (const { endpoint, may } of rows.filter((row) => !row.may.includes('anybody'))) {
    const least = roles.findIndex((role) => may.includes(role))
    expect([endpoint, may]).toEqual([endpoint, roles.slice(least)])
  }
})
