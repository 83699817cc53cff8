import { Writable } from 'node:stream'
import { inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { buildApp } from '../app.ts'
import { openPeople } from './people.ts'
import { asker, password } from './testing.ts'

test('neither the log, told to say everything, nor the database holds a password, code, token, PIN or cookie', async () => {
  let log = ''
  const stream = new Writable({
    write: (chunk: Buffer, _, done) => {
      log += chunk.toString()
      done()
    },
  })
  const store = await openSqliteStore(inMemory)
  const book = openBook(store, () => new Date())
  const people = await openPeople(store)
  const app = await buildApp({ book, people, accounts: true, version: '0', logger: { level: 'trace', stream } })
  onTestFinished(async () => {
    await app.close()
    await book.close()
  })
  const ask = asker(app)
  const { code } = (await people.firstRunCode())!
  await ask('POST', '/session/first-run', { code: 'WRNG-CODE-2345', name: 'Ada', login: 'ada', password })
  expect((await ask('POST', '/session/first-run', { code, name: 'Ada', login: 'ada', password })).statusCode).toBe(201)
  const cookie = ask.cookies()
  await ask('PUT', '/me/pin', { pin: '86420135', password })
  const { token } = (await ask('POST', '/me/tokens', { name: 'scale', scopes: ['read'], days: 1 })).json()
  expect((await asker(app, { authorization: `Bearer ${token}` })('GET', '/book')).statusCode).toBe(200)
  const { spareCodes } = (await ask('POST', '/me/second-factor', { password })).json()
  await asker(app)('POST', '/session', { login: 'ada', password: 'another wrong one' })
  await ask('GET', `/entries?token=${token}`)

  const secrets = [password, 'another wrong one', 'WRNG-CODE-2345', code, '86420135', token, cookie, spareCodes[0]]
  expect(log.length).toBeGreaterThan(500)
  expect(secrets.filter((secret) => log.includes(secret))).toEqual([])
  const kept = JSON.stringify(await store.beside())
  expect(kept).toContain('"person_two_factor"')
  expect(secrets.filter((secret) => kept.includes(secret))).toEqual([])
})
