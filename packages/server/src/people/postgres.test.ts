/** The same people on a PostgreSQL server, kept by two servers at once. */
import { openBook, openStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { postgresPlace } from '../../../book/src/store/testing.ts'
import { buildApp } from '../app.ts'
import { openPeople } from './people.ts'
import { asker, firstOwner, invited, password, peopledApp } from './testing.ts'

test('two servers on one database keep the same people: who signs in at one is known to the other', async () => {
  const place = await postgresPlace()
  const served = await peopledApp({ place })
  const owner = await firstOwner(served)
  const ben = await invited(served, owner, { name: 'Ben', role: 'operator' })

  const store = await openStore(place)
  const book = openBook(store, () => new Date())
  const people = await openPeople(store)
  const app = await buildApp({ book, people, accounts: true, version: '0.0.0-test' })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const there = asker(app, { cookie: ben.ask.cookies() })
  expect((await there('GET', '/session')).json()).toMatchObject({ person: { name: 'Ben' }, role: 'operator' })
  expect(await people.firstRunCode()).toBe(null)

  for (let n = 0; n < 10; n++) {
    const ask = n % 2 === 0 ? asker(app) : asker(served.app)
    expect((await ask('POST', '/session', { login: 'ben', password: 'not this one' })).statusCode).toBe(401)
  }
  expect((await asker(app)('POST', '/session', { login: 'ben', password })).statusCode).toBe(429)

  await owner('PUT', `/people/${ben.id}`, { closed: true })
  expect((await there('GET', '/book')).statusCode).toBe(401)
})

test('sessions, second factors, tokens and devices are the same there', async () => {
  const served = await peopledApp({ place: await postgresPlace() })
  const owner = await firstOwner(served)
  expect((await owner('GET', '/me/sessions')).json().sessions).toMatchObject([{ isThis: true }])
  expect((await owner('POST', '/me/second-factor', { password })).json().spareCodes).toHaveLength(10)
  await owner('PUT', '/me/pin', { pin: '2468', password })
  const { token } = (await owner('POST', '/devices', { name: 'Tablet' })).json()
  const tablet = asker(served.app, { authorization: `Bearer ${token}` })
  const [{ id }] = (await tablet('GET', '/device/people')).json().people
  expect((await tablet('PUT', '/device/person', { person: id, pin: '2468' })).statusCode).toBe(204)
  const entry = {
    id: '00000000-0000-4000-8000-000000000001',
    at: '2026-03-03T09:30:00Z',
    kind: 'handover',
    about: { kind: 'shop' },
    text: 'all calm',
  }
  expect((await tablet('PUT', `/entries/${entry.id}`, entry)).statusCode).toBe(201)
  expect((await owner('GET', `/entries/${entry.id}`)).json()).toMatchObject({ by: 'Ada Owner', deviceName: 'Tablet' })
})
