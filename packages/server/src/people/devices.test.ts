import { expect, test } from 'vitest'
import { asker, firstOwner, invited, password, peopledApp } from './testing.ts'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const reading = (n: number, more: object = {}) => ({
  id: id(n),
  at: '2026-03-03T09:30:00Z',
  kind: 'reading',
  sump: 's1',
  brix: 5,
  ...more,
})

async function tablet() {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const ben = await invited(served, owner, { name: 'Ben', role: 'operator' })
  const cleo = await invited(served, owner, { name: 'Cleo', role: 'keeper' })
  for (const [who, pin] of [
    [ben, '2468'],
    [cleo, '1357'],
  ] as const) {
    expect((await who.ask('PUT', '/me/pin', { pin, password })).statusCode).toBe(204)
  }
  const { token, id: device } = (await owner('POST', '/devices', { name: 'Tablet in hall 2' })).json()
  const ask = asker(served.app, { authorization: `Bearer ${token}` })
  const switchTo = (person: string, pin: string) => ask('PUT', '/device/person', { person, pin })
  return { served, owner, ben, cleo, device, ask, switchTo }
}

test('a shared tablet reads, and writes only when somebody has said who they are', async () => {
  const { ask, ben, owner, device, switchTo } = await tablet()
  expect((await ask('GET', '/book')).statusCode).toBe(200)
  expect((await ask('PUT', `/entries/${id(1)}`, reading(1))).statusCode).toBe(401)
  expect((await ask('GET', '/device/people')).json().people.map(({ name }: { name: string }) => name)).toEqual([
    'Ben',
    'Cleo',
  ])
  expect((await switchTo(ben.id, '2468')).statusCode).toBe(204)
  expect((await ask('GET', '/session')).json()).toMatchObject({
    by: 'token',
    person: { name: 'Ben' },
    role: 'operator',
    device: { kind: 'shared', name: 'Tablet in hall 2' },
  })
  expect((await ask('PUT', `/entries/${id(1)}`, reading(1))).statusCode).toBe(201)
  expect((await owner('GET', `/entries/${id(1)}`)).json()).toMatchObject({
    by: 'Ben',
    envelope: { person: ben.id, device },
    deviceName: 'Tablet in hall 2',
  })
  await ask('DELETE', '/device/person')
  expect((await ask('PUT', `/entries/${id(2)}`, reading(2))).statusCode).toBe(401)
})

test('what the last person wrote and could not send goes out in their name, not in the next one’s', async () => {
  const { ask, ben, cleo, owner, switchTo } = await tablet()
  await switchTo(ben.id, '2468')
  await switchTo(cleo.id, '1357')
  expect((await ask('PUT', `/entries/${id(1)}`, reading(1, { by: ben.id }))).json().quarantine).toBe(
    'this book does not know the sump "s1" yet',
  )
  expect((await owner('GET', `/entries/${id(1)}`)).json().by).toBe('Ben')
  const stranger = (await owner('POST', '/people', { name: 'Dan', role: 'operator' })).json()
  expect((await ask('PUT', `/entries/${id(2)}`, reading(2, { by: stranger.id }))).json().quarantine).toBe(
    'it is written in the name of Dan, and Cleo sent it',
  )
})

test('a PIN opens no more than the tablet may do, whoever types it', async () => {
  const { ask, cleo, switchTo } = await tablet()
  await switchTo(cleo.id, '1357')
  expect((await ask('GET', '/session')).json()).toMatchObject({ person: { name: 'Cleo' }, role: 'operator' })
  expect((await ask('GET', '/quarantine')).statusCode).toBe(403)
  expect((await ask('GET', '/export')).statusCode).toBe(403)
  expect((await ask('PUT', '/me/pin', { pin: '9999', password })).statusCode).toBe(403)
})

test('after five wrong PINs for a person the right one waits', async () => {
  const { served, ben, switchTo } = await tablet()
  for (let n = 0; n < 5; n++) expect((await switchTo(ben.id, '0000')).statusCode).toBe(401)
  expect((await switchTo(ben.id, '2468')).statusCode).toBe(429)
  served.clock.pass(15 * 60_000)
  expect((await switchTo(ben.id, '2468')).statusCode).toBe(204)
})

test('a switch ends with the shift, with the account, and with the device', async () => {
  const { served, owner, ben, ask, device, switchTo } = await tablet()
  await switchTo(ben.id, '2468')
  served.clock.pass(10 * 60 * 60_000)
  expect((await ask('GET', '/session')).json().person).toBe(null)
  await switchTo(ben.id, '2468')
  await owner('PUT', `/people/${ben.id}`, { closed: true })
  expect((await ask('GET', '/session')).json().person).toBe(null)
  expect((await switchTo(ben.id, '2468')).statusCode).toBe(401)
  expect((await owner('GET', '/devices')).json().devices).toMatchObject([{ id: device, name: 'Tablet in hall 2' }])
  expect((await owner('DELETE', `/devices/${device}`)).statusCode).toBe(204)
  expect((await ask('GET', '/book')).statusCode).toBe(401)
})

test('the browser of a shared tablet keeps its token where no script and no answer shows it', async () => {
  const { served, owner } = await tablet()
  const made = await owner('POST', '/devices', { name: 'Tablet 3', here: true })
  expect(Object.keys(made.json())).toEqual(['id'])
  const cookie = [made.headers['set-cookie']].flat().find((one) => one?.startsWith('sumpbook_device='))
  expect(cookie).toMatch(/HttpOnly/)
  expect(cookie).toMatch(/SameSite=Lax/)
  await owner('DELETE', '/session')
  expect((await owner('GET', '/session')).json()).toMatchObject({
    by: 'token',
    person: null,
    device: { name: 'Tablet 3' },
  })
  expect((await served.app.inject('/api/v1/session')).json()).toMatchObject({ by: 'nobody' })
})

test('a phone stays signed in as its person, for entries and reading, and is ended like a token', async () => {
  const { ben, owner } = await tablet()
  expect((await ben.ask('POST', '/me/devices', { name: 'Ben’s phone' })).statusCode).toBe(201)
  await ben.ask('DELETE', '/session')
  expect((await ben.ask('GET', '/session')).json()).toMatchObject({
    by: 'token',
    person: { name: 'Ben' },
    role: 'operator',
  })
  expect((await ben.ask('PUT', `/entries/${id(1)}`, reading(1))).statusCode).toBe(201)
  const [{ id: token }] = (await owner('GET', `/people/${ben.id}/tokens`)).json().tokens
  await owner('DELETE', `/people/${ben.id}/tokens/${token}`)
  expect((await ben.ask('GET', '/book')).statusCode).toBe(401)
})

test('a token does what it was made for, as long as its person may, and until its day', async () => {
  const { served, owner, ben } = await tablet()
  const made = (await ben.ask('POST', '/me/tokens', { name: 'scale', scopes: ['read', 'write'], days: 30 })).json()
  expect(made.token).toMatch(/^sumpbook_[\w-]{43}$/)
  const ask = asker(served.app, { authorization: `Bearer ${made.token}` })
  expect((await ask('PUT', `/entries/${id(1)}`, reading(1))).statusCode).toBe(201)
  const { tokens } = (await ben.ask('GET', '/me/tokens')).json()
  expect(JSON.stringify(tokens)).not.toContain(made.token)
  await owner('PUT', `/people/${ben.id}`, { role: 'reader' })
  expect((await ask('PUT', `/entries/${id(2)}`, reading(2))).statusCode).toBe(403)
  served.clock.pass(30 * 24 * 60 * 60_000)
  expect((await ask('GET', '/book')).statusCode).toBe(401)
})
