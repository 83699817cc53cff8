import { afterEach, expect, test, vi } from 'vitest'
import type { Entry } from '../api/types.ts'
import { isSameBut, sendEntries } from './send-entries.ts'

const id = '01900000-0000-7000-8000-000000000001'
const entry: Entry = { id, at: '2026-11-25T07:00:00Z', kind: 'reading', sump: 's1', brix: 3 }
const other: Entry = { ...entry, id: id.replace(/1$/, '2') }

afterEach(() => vi.unstubAllGlobals())

/** The network: an answer by method and path. */
function answering(answers: Record<string, () => Response>): string[] {
  const asked: string[] = []
  vi.stubGlobal('fetch', async (path: string, { method = 'GET' }: RequestInit = {}) => {
    asked.push(`${method} ${path}`)
    const answer = answers[`${method} ${path}`]
    if (answer === undefined) throw new TypeError('Failed to fetch')
    return answer()
  })
  return asked
}
const json = (status: number, body: unknown) => () => new Response(JSON.stringify(body), { status })
const put = 'PUT /api/v1/entries'
const arrival = (status: string, more: object = {}) => ({
  id,
  status,
  quarantine: null,
  warnings: [],
  faults: [],
  confirmable: false,
  ...more,
})

test('new and seen before are both taken; what is held says what for', async () => {
  answering({
    [put]: json(200, { results: [arrival('added'), arrival('same', { id: other.id, quarantine: 'a keeper' })] }),
  })
  expect(await sendEntries([entry, other])).toEqual({
    outcome: 'answered',
    said: [
      { id, outcome: 'taken', heldFor: null },
      { id: other.id, outcome: 'taken', heldFor: 'a keeper' },
    ],
  })
})

test('a refused entry brings its faults and whether they can be confirmed', async () => {
  const faults = [{ pointer: '/at', found: 'a', expected: 'b' }]
  answering({ [put]: json(200, { results: [arrival('refused', { faults, confirmable: true })] }) })
  expect(await sendEntries([entry])).toMatchObject({
    outcome: 'answered',
    said: [{ id, outcome: 'refused', problem: { errors: faults, confirmable: true } }],
  })
})

test('an entry that arrived before it was confirmed is the same entry; another under its id is not', async () => {
  const confirmed: Entry = { ...entry, confirmed: ['/brix'] }
  const conflict = { [put]: json(200, { results: [arrival('conflict')] }) }
  answering({ ...conflict, [`GET /api/v1/entries/${id}`]: json(200, { entry }) })
  expect(await sendEntries([confirmed])).toMatchObject({ said: [{ outcome: 'taken' }] })
  answering({ ...conflict, [`GET /api/v1/entries/${id}`]: json(200, { entry: { ...entry, brix: 4 } }) })
  expect(await sendEntries([confirmed])).toMatchObject({ said: [{ outcome: 'refused', problem: { status: 409 } }] })
})

test('no network, a page of something else in its place, a full server and nobody signed in are no answer', async () => {
  const ours = { type: 'urn:sumpbook:not-signed-in', title: 'Sign in' }
  const answers = [
    { [put]: () => new Response('<html>Accept the terms</html>', { status: 200 }) },
    { [put]: () => new Response('<html>Forbidden</html>', { status: 403 }) },
    { [put]: json(507, { type: 'urn:sumpbook:no-room', title: 'There is no room' }) },
    { [put]: json(401, ours) },
    {},
  ]
  for (const answer of answers) {
    answering(answer)
    expect(await sendEntries([entry])).toEqual({ outcome: 'no-answer' })
  }
})

test('a server that fails over a request is believed to have failed over what was in it', async () => {
  answering({ [put]: json(500, { type: 'urn:sumpbook:failed', title: 'Failed', detail: 'It failed.' }) })
  expect(await sendEntries([entry, other])).toEqual({ outcome: 'fault', said: '500 It failed.' })
})

test('a refusal of the whole is the refusal of each: who may not write', async () => {
  const problem = { type: 'urn:sumpbook:not-allowed', title: 'Not allowed', status: 403 }
  answering({ [put]: json(403, problem) })
  expect(await sendEntries([entry, other])).toEqual({
    outcome: 'answered',
    said: [entry, other].map((one) => ({ id: one.id, outcome: 'refused', problem })),
  })
})

test('entries are compared field by field, whatever their order', () => {
  expect(isSameBut({ a: 1, b: { c: [1, 2], d: 2 } }, { b: { d: 2, c: [1, 2] }, x: 9, a: 1 }, 'x')).toBe(true)
  expect(isSameBut({ a: [1, 2] }, { a: [2, 1] }, 'x')).toBe(false)
})
