import { expect, test } from 'vitest'
import { type Ask, asker, firstOwner, invited, peopledApp } from './testing.ts'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const at = '2026-03-03T09:30:00Z'
const shop = {
  format: 'sumpbook-book/1',
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200 }],
}
const reading = (n: number, more: object = {}) => ({ id: id(n), at, kind: 'reading', sump: 's1', brix: 5, ...more })
const put = (ask: Ask, entry: { id: string }, headers: Record<string, string> = {}) =>
  ask('PUT', `/entries/${entry.id}`, entry, headers)
const voidOf = (n: number, target: number, more: object = {}) => ({
  id: id(n),
  at,
  kind: 'void',
  entry: id(target),
  ...more,
})

async function shopWithPeople() {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const part = (head: string, body: string) => `--edge\r\ncontent-disposition: form-data; ${head}\r\n\r\n${body}\r\n`
  const file = part('name="file"; filename="shop.json"', JSON.stringify(shop))
  const brought = await served.app.inject({
    method: 'POST',
    url: '/api/v1/import',
    headers: { 'content-type': 'multipart/form-data; boundary=edge', cookie: owner.cookies() },
    payload: `${file}--edge--\r\n`,
  })
  expect(brought.statusCode, brought.body).toBe(200)
  const ben = await invited(served, owner, { name: 'Ben', role: 'operator' })
  const cleo = await invited(served, owner, { name: 'Cleo', role: 'keeper' })
  return { served, owner, ben, cleo }
}

test('an entry carries who was signed in, in its envelope and never in its body', async () => {
  const { ben, owner } = await shopWithPeople()
  expect((await put(ben.ask, reading(1))).statusCode).toBe(201)
  expect((await put(ben.ask, reading(1))).statusCode).toBe(200)
  const page = (await owner('GET', `/entries/${id(1)}`)).json()
  expect(page).toMatchObject({
    by: 'Ben',
    person: ben.id,
    entry: reading(1),
    envelope: { person: ben.id, device: null },
  })
  expect(page.entry.by).toBe(undefined)
  expect((await owner('GET', '/entries')).json().entries).toMatchObject([{ id: id(1), by: 'Ben' }])
  expect((await owner('GET', '/sumps/s1')).json().history).toMatchObject([{ by: 'Ben' }])
  expect((await owner('GET', `/entries/${id(99)}`)).statusCode).toBe(404)
})

test('a name that is nobody’s here does not hide who wrote it', async () => {
  const { ben, owner } = await shopWithPeople()
  await put(ben.ask, reading(1, { by: 'The boss' }))
  expect((await owner('GET', `/entries/${id(1)}`)).json()).toMatchObject({ by: 'Ben', entry: { by: 'The boss' } })
})

test('what is written in the name of another is held until a keeper lets it in', async () => {
  const { ben, cleo, owner } = await shopWithPeople()
  const answer = await put(ben.ask, reading(1, { by: cleo.id }))
  expect([answer.statusCode, answer.json().quarantine]).toEqual([
    201,
    'it is written in the name of Cleo, and Ben sent it',
  ])
  expect((await owner('GET', '/entries')).json().entries).toEqual([])
  expect((await cleo.ask('GET', '/quarantine')).json().entries).toMatchObject([
    { id: id(1), by: 'Ben', waitsFor: 'keeper' },
  ])
  const verdict = { id: id(2), at, kind: 'verdict', entries: [id(1)], answer: 'let in' }
  expect((await put(ben.ask, verdict)).statusCode).toBe(403)
  expect((await put(cleo.ask, verdict)).statusCode).toBe(201)
  expect((await owner('GET', '/entries')).json().entries).toHaveLength(2)
  expect((await cleo.ask('GET', '/quarantine')).json().entries).toEqual([])
})

const addition = { id: id(1), at, kind: 'addition', sump: 's1' }
test.each([
  [
    'a set-up',
    { ...addition, kind: 'setup', sump: undefined, about: { kind: 'sump', id: 's1' }, changes: { name: 'X' } },
    '/kind',
  ],
  ['a verdict', { ...addition, kind: 'verdict', answer: 'misread' }, '/kind'],
  ['a dose of an additive', { ...addition, additive: { name: 'Biocide 3', litres: 1 } }, '/additive'],
  ['a step that a keeper signs', { ...addition, kind: 'signoff', job: id(50), step: 'rinse-check-2' }, '/step'],
])('%s is a keeper’s to write', async (_, entry, pointer) => {
  const { ben, cleo } = await shopWithPeople()
  const refused = await put(ben.ask, entry)
  expect(refused.json()).toMatchObject({ status: 403, type: 'urn:sumpbook:not-allowed', errors: [{ pointer }] })
  expect((await put(cleo.ask, entry)).statusCode).toBe(201)
})

test('a step that anybody may do is signed by an operator', async () => {
  const { ben } = await shopWithPeople()
  const signed = { ...addition, kind: 'signoff', job: id(50), step: 'rinse-1' }
  expect((await put(ben.ask, signed)).statusCode).toBe(201)
})

test('what the shop keeps for its owners is dosed by nobody else, by its name or by its id', async () => {
  const { owner, cleo } = await shopWithPeople()
  const additives = [
    { id: 'b3', name: 'Biocide 3', kind: 'biocide', who: 'owner' },
    { id: 'f1', name: 'Defoamer 1', kind: 'defoamer' },
  ]
  const list = {
    id: id(60),
    at,
    kind: 'setup',
    about: { kind: 'shop', id: 'shop' },
    changes: { name: 'Invented works', additives },
  }
  const listed = await put(owner, list)
  expect(listed.statusCode, listed.body).toBe(201)
  const dose = (n: number, additive: object) => ({ ...addition, id: id(n), additive: { litres: 1, ...additive } })
  for (const [n, additive] of [{ id: 'b3' }, { name: 'Biocide 3' }].entries()) {
    const refused = (await put(cleo.ask, dose(61 + n, additive))).json()
    expect(refused).toMatchObject({ status: 403, errors: [{ pointer: '/additive' }] })
  }
  expect((await put(cleo.ask, dose(63, { id: 'f1' }))).statusCode).toBe(201)
  expect((await put(owner, dose(64, { id: 'b3' }))).statusCode).toBe(201)
})

test('an operator takes back what is their own, for a day; a keeper takes back any, with a reason', async () => {
  const { served, ben, cleo } = await shopWithPeople()
  for (const n of [1, 2]) await put(ben.ask, reading(n))
  await put(cleo.ask, reading(3))
  expect((await put(ben.ask, voidOf(11, 3))).json()).toMatchObject({ status: 403, errors: [{ pointer: '/entry' }] })
  expect((await put(ben.ask, voidOf(12, 1))).statusCode).toBe(201)
  served.clock.pass(24 * 60 * 60_000)
  expect((await put(ben.ask, voidOf(13, 2))).statusCode).toBe(201)
  await put(ben.ask, reading(4))
  served.clock.pass(24 * 60 * 60_000 + 1)
  expect((await put(ben.ask, voidOf(14, 4))).json()).toMatchObject({
    status: 403,
    errors: [{ pointer: '/entry', expected: expect.stringContaining('24 hours') }],
  })
  // What was taken once is asked again: the same answer, whatever the day.
  expect((await put(ben.ask, voidOf(13, 2))).statusCode).toBe(200)
  expect((await put(cleo.ask, voidOf(15, 4))).json()).toMatchObject({ status: 403, errors: [{ pointer: '/reason' }] })
  expect((await put(cleo.ask, voidOf(15, 4, { reason: 'wrong sump' }))).statusCode).toBe(201)
})

test('in a batch each entry is judged by itself; a void may follow its own entry', async () => {
  const { ben } = await shopWithPeople()
  const entries = [
    reading(1),
    voidOf(2, 1),
    { ...addition, id: id(3), additive: { name: 'B' } },
    voidOf(4, 77),
    reading(5),
  ]
  const { results } = (await ben.ask('PUT', '/entries', { entries })).json()
  expect(
    results.map(({ status, quarantine }: { status: string; quarantine: string | null }) => [status, quarantine]),
  ).toEqual([
    ['added', null],
    ['added', null],
    ['refused', null],
    ['added', 'the entry it withdraws has not arrived here'],
    ['added', null],
  ])
})

test('late entries of a closed account are held for 30 days, and nothing else is opened by it', async () => {
  const { served, ben, owner, cleo } = await shopWithPeople()
  await owner('PUT', `/people/${ben.id}`, { closed: true })
  expect((await put(ben.ask, reading(1))).json()).toMatchObject({
    status: 'added',
    quarantine: 'it came from an account that is closed',
  })
  expect((await ben.ask('GET', '/entries')).statusCode).toBe(401)
  expect((await cleo.ask('GET', '/quarantine')).json().entries).toMatchObject([{ id: id(1), by: 'Ben' }])
  served.clock.pass(31 * 24 * 60 * 60_000)
  expect((await put(ben.ask, reading(2))).statusCode).toBe(401)
})

test('what a device says of its clock corrects the envelope, never the entry', async () => {
  const { served, ben, owner } = await shopWithPeople()
  const ahead = new Date(served.clock.now().getTime() + 2 * 60 * 60_000).toISOString()
  const entry = reading(1, { at: ahead, recordedAt: ahead })
  expect((await put(ben.ask, entry)).json()).toMatchObject({ status: 422, confirmable: true })
  expect((await put(ben.ask, entry, { 'sumpbook-sent-at': ahead })).statusCode).toBe(201)
  const page = (await owner('GET', `/entries/${id(1)}`)).json()
  expect(page.entry.at).toBe(ahead)
  expect(page.envelope.clockAheadMs).toBe(7_200_000)
  expect(page.writtenAt).toBe(served.clock.now().toISOString())
  // A clock that nobody set says nothing.
  await put(ben.ask, reading(2), { 'sumpbook-sent-at': '1970-01-01T00:00:00Z' })
  expect((await owner('GET', `/entries/${id(2)}`)).json().envelope.clockAheadMs).toBe(null)
})

test('somebody without an account writes nothing', async () => {
  const { served } = await shopWithPeople()
  expect((await put(asker(served.app), reading(1))).statusCode).toBe(401)
})

test('the journal is asked for by a person’s name, a kind and days, as pages and as a table', async () => {
  const { ben, cleo, owner } = await shopWithPeople()
  await put(ben.ask, reading(1))
  await put(cleo.ask, reading(2, { note: 'after lunch' }))
  await put(cleo.ask, { ...reading(3), kind: 'skip', brix: undefined } as never)
  const idsOf = async (query: string) =>
    (await owner('GET', `/entries?${query}`)).json().entries.map((line: { id: string }) => line.id)
  expect(await idsOf('by=cleo&kind=reading')).toEqual([id(2)])
  expect(await idsOf(`by=${ben.id}`)).toEqual([id(1)])
  expect(await idsOf('kind=skip,reading&from=2026-03-03&to=2026-03-03')).toEqual([id(3), id(2), id(1)])
  expect(await idsOf('words=lunch&sump=s1')).toEqual([id(2)])
  expect(await idsOf('from=2026-03-04')).toEqual([])
  for (const wrong of ['kind=', 'kind=a;b', 'from=2026-3-1', 'from=2026-03-02&to=2026-03-01', 'who=ben']) {
    expect((await owner('GET', `/entries?${wrong}`)).statusCode, wrong).toBe(400)
    expect((await owner('GET', `/entries/table?${wrong}`)).statusCode, wrong).toBe(400)
  }
  const table = await ben.ask('GET', '/entries/table?by=Cleo&kind=reading')
  expect(table.headers['content-disposition']).toContain('sumpbook-journal.csv')
  expect(table.body.split('\r\n').slice(1)).toEqual([expect.stringContaining(',Cleo,after lunch,'), ''])
  const workbook = await ben.ask('GET', '/entries/table?format=xlsx')
  // A workbook is a ZIP archive: it begins with "PK" (PKWARE APPNOTE 4.3.7).
  expect(workbook.rawPayload.subarray(0, 2).toString()).toBe('PK')
})
