import { expect, test } from 'vitest'
import { asker, firstOwner, invited, password, peopledApp } from './testing.ts'

test('without an owner there is nothing but the first-run page’s question', async () => {
  const { app } = await peopledApp()
  const ask = asker(app)
  expect((await ask('GET', '/session')).json()).toMatchObject({
    accounts: true,
    firstRun: true,
    person: null,
    role: null,
  })
  for (const path of ['/book', '/today', '/export', '/people']) {
    const answer = await ask('GET', path)
    expect([path, answer.statusCode, answer.json().type]).toEqual([path, 401, 'urn:sumpbook:sign-in-needed'])
  }
})

test('the code that the server printed makes the first owner, once', async () => {
  const served = await peopledApp()
  const { code } = (await served.people.firstRunCode())!
  const chosen = { code: code.toLowerCase().replaceAll('-', ' '), name: 'Ada Owner', login: 'Ada', password }
  const ask = asker(served.app)
  expect((await ask('POST', '/session/first-run', chosen)).statusCode).toBe(201)
  expect((await ask('GET', '/session')).json()).toMatchObject({
    firstRun: false,
    by: 'session',
    person: { name: 'Ada Owner' },
    role: 'owner',
  })
  const again = await asker(served.app)('POST', '/session/first-run', { ...chosen, login: 'eve' })
  expect(again.json()).toMatchObject({ status: 401, type: 'urn:sumpbook:wrong-credentials' })
  expect(await served.people.firstRunCode()).toBe(null)
})

test('a first-run code is good for an hour', async () => {
  const { app, people, clock } = await peopledApp()
  const { code } = (await people.firstRunCode())!
  clock.pass(60 * 60_000)
  const chosen = { code, name: 'Ada', login: 'ada', password }
  expect((await asker(app)('POST', '/session/first-run', chosen)).statusCode).toBe(401)
})

test.each([
  ['a short password', { password: 'short pass'.slice(0, 9) }, '/password'],
  ['a password of one letter', { password: 'aaaaaaaaaaaaaa' }, '/password'],
  ['a password with the own name in it', { password: 'ada-ada-ada-1' }, '/password'],
  ['a password that many use', { password: 'Qwertyuiop' }, '/password'],
  ['a name with a space', { login: 'ada owner' }, '/login'],
])('%s is refused before the code is used', async (_, wrong, pointer) => {
  const served = await peopledApp()
  const { code } = (await served.people.firstRunCode())!
  const chosen = { code, name: 'Ada', login: 'ada', password }
  const refused = await asker(served.app)('POST', '/session/first-run', { ...chosen, ...wrong })
  expect(refused.json()).toMatchObject({ status: 422, errors: [{ pointer }] })
  expect((await asker(served.app)('POST', '/session/first-run', chosen)).statusCode).toBe(201)
})

test('name and password let in, anything else does not, and the sentence is the same', async () => {
  const served = await peopledApp()
  await firstOwner(served)
  const signIn = (login: string, given: string) => asker(served.app)('POST', '/session', { login, password: given })
  expect((await signIn(' ADA ', password)).json()).toEqual({ secondFactor: false })
  const [wrong, unknown] = [await signIn('ada', 'slow grey heron 8'), await signIn('nobody', password)]
  expect(wrong.statusCode).toBe(401)
  expect(wrong.json()).toEqual(unknown.json())
})

test('the session’s cookie is out of reach of scripts and of other sites, and no answer holds it', async () => {
  const served = await peopledApp()
  await firstOwner(served)
  const answer = await asker(served.app)('POST', '/session', { login: 'ada', password })
  const [cookie] = [answer.headers['set-cookie']].flat()
  expect(cookie).toMatch(/^sumpbook\.session_token=.*HttpOnly/)
  expect(cookie).toContain('SameSite=Lax')
  expect(cookie).not.toContain('Secure')
  expect(answer.body).toBe('{"secondFactor":false}')
})

test('where the book is reached by https, cookies are for https alone', async () => {
  const served = await peopledApp({ publicUrl: 'https://book.example' })
  await firstOwner(served)
  const answer = await asker(served.app)('POST', '/session', { login: 'ada', password })
  expect([answer.headers['set-cookie']].flat()[0]).toMatch(/^__Secure-sumpbook\.session_token=.*Secure/)
})

test('after ten wrong passwords for a name the right one waits a quarter of an hour as well', async () => {
  const served = await peopledApp()
  await firstOwner(served)
  const signIn = (given: string) => asker(served.app)('POST', '/session', { login: 'ada', password: given })
  for (let n = 0; n < 10; n++) expect((await signIn('slow grey heron 8')).statusCode).toBe(401)
  const blocked = await signIn(password)
  expect([blocked.statusCode, blocked.headers['retry-after']]).toEqual([429, '900'])
  expect(blocked.json()).toMatchObject({ type: 'urn:sumpbook:too-many-tries' })
  served.clock.pass(15 * 60_000)
  expect((await signIn(password)).statusCode).toBe(200)
})

test('codes are not guessed: after ten tries an address waits', async () => {
  const { app, people } = await peopledApp()
  const { code } = (await people.firstRunCode())!
  const tryCode = (given: string) =>
    asker(app)('POST', '/session/first-run', { code: given, name: 'Eve', login: 'eve', password })
  for (let n = 0; n < 10; n++) expect((await tryCode('AAAA-BBBB-CCCC')).statusCode).toBe(401)
  expect((await tryCode(code)).statusCode).toBe(429)
})

test('sessions are listed and ended; a session that was ended is nobody at once', async () => {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const other = asker(served.app)
  await other('POST', '/session', { login: 'ada', password }, { 'user-agent': 'a phone' })
  const { sessions } = (await owner('GET', '/me/sessions')).json()
  expect(sessions).toMatchObject([{ isThis: true }, { isThis: false, browser: 'a phone', address: '127.0.0.1' }])
  expect((await owner('DELETE', `/me/sessions/${sessions[1].id}`)).statusCode).toBe(204)
  expect((await other('GET', '/book')).statusCode).toBe(401)
  expect((await owner('DELETE', '/session')).statusCode).toBe(204)
  expect((await owner('GET', '/book')).statusCode).toBe(401)
})

test('a new password ends the other sessions, and needs the old one', async () => {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const other = asker(served.app)
  await other('POST', '/session', { login: 'ada', password })
  const change = (given: string) => owner('PUT', '/me/password', { password: given, newPassword: 'quick red kite 12' })
  expect((await change('not the old one')).statusCode).toBe(401)
  expect((await other('GET', '/book')).statusCode).toBe(200)
  expect((await change(password)).statusCode).toBe(204)
  expect((await other('GET', '/book')).statusCode).toBe(401)
  expect((await owner('GET', '/book')).statusCode).toBe(200)
  expect((await other('POST', '/session', { login: 'ada', password })).statusCode).toBe(401)
})

test('somebody invited comes in by a code that is good once; a new code brings back who lost the password', async () => {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const { id, code } = (await owner('POST', '/people', { name: 'Ben', role: 'operator' })).json()
  const join = (given: string, login = 'ben') =>
    asker(served.app)('POST', '/session/join', { code: given, login, password })
  expect((await join(code, 'ada')).json()).toMatchObject({ status: 422, errors: [{ pointer: '/login' }] })
  expect((await join(code)).statusCode).toBe(201)
  expect((await join(code)).statusCode).toBe(401)
  const again = (await owner('POST', `/people/${id}/code`)).json()
  expect((await join(again.code)).statusCode).toBe(201)
  expect((await owner('GET', '/people')).json().people).toMatchObject([
    { name: 'Ada Owner', role: 'owner', login: 'ada' },
    { id, name: 'Ben', role: 'operator', login: 'ben', closedAt: null },
  ])
})

test('an account that is closed opens nothing any more; the last owner stays', async () => {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const ben = await invited(served, owner, { name: 'Ben', role: 'keeper' })
  expect((await ben.ask('GET', '/export')).statusCode).toBe(200)
  await owner('PUT', `/people/${ben.id}`, { closed: true })
  expect((await ben.ask('GET', '/book')).statusCode).toBe(401)
  expect((await ben.ask('GET', '/session')).json()).toMatchObject({ person: null, role: null })
  const [{ id }] = (await owner('GET', '/people')).json().people
  expect((await owner('PUT', `/people/${id}`, { closed: true })).statusCode).toBe(403)
  expect((await owner('PUT', `/people/${id}`, { role: 'keeper' })).statusCode).toBe(403)
  await owner('PUT', `/people/${ben.id}`, { closed: false, role: 'owner' })
  expect((await owner('PUT', `/people/${id}`, { role: 'keeper' })).statusCode).toBe(200)
})

test('no session, and no page of another name, on a machine without accounts', async () => {
  const { app } = await peopledApp({ accounts: false })
  const ask = asker(app)
  expect((await ask('GET', '/session')).json()).toMatchObject({
    accounts: false,
    firstRun: false,
    by: 'machine',
    role: 'owner',
  })
  expect((await ask('GET', '/export')).statusCode).toBe(200)
  expect((await ask('POST', '/session', { login: 'ada', password })).statusCode).toBe(403)
  for (const host of ['elsewhere.example', 'elsewhere.example:7340', '192.0.2.7:7340']) {
    expect((await ask('GET', '/book', undefined, { host })).statusCode).toBe(403)
  }
  for (const host of ['localhost:7340', '127.0.0.1:7340', '[::1]:7340', 'book.localhost']) {
    expect((await ask('GET', '/book', undefined, { host })).statusCode).toBe(200)
  }
})
