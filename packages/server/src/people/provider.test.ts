/** Sign-in by a provider of OpenID Connect, against one that this test serves on loopback. */
import { createHash, createSign, generateKeyPairSync, randomUUID } from 'node:crypto'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { text } from 'node:stream/consumers'
import { expect, onTestFinished, test } from 'vitest'
import { asker, firstOwner, password, peopledApp } from './testing.ts'

interface Profile {
  sub: string
  email: string
  email_verified: boolean
  name: string
}

const base64 = (value: string | Buffer) => Buffer.from(value).toString('base64url')

/** A provider at which everybody who is asked is the person given. OpenID Connect Core 1.0, §3.1; RS256 of RFC 7518. */
async function provider(profile: Profile) {
  const { privateKey, publicKey } = generateKeyPairSync('rsa', { modulusLength: 2048 })
  const asked = new Map<string, { nonce: string | null; challenge: string | null; redirect: string }>()
  const seen = { clientSecret: '', verifier: '' }
  const signed = (claims: object) => {
    const head = `${base64(JSON.stringify({ alg: 'RS256', kid: 'k', typ: 'JWT' }))}.${base64(JSON.stringify(claims))}`
    return `${head}.${createSign('RSA-SHA256').update(head).sign(privateKey).toString('base64url')}`
  }
  const server = createServer(async (request, response) => {
    const url = new URL(request.url!, issuer())
    const json = (body: object, status = 200) =>
      response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body))
    if (url.pathname === '/.well-known/openid-configuration') {
      return json({
        issuer: issuer(),
        authorization_endpoint: `${issuer()}/authorize`,
        token_endpoint: `${issuer()}/token`,
        userinfo_endpoint: `${issuer()}/userinfo`,
        jwks_uri: `${issuer()}/keys`,
        response_types_supported: ['code'],
        subject_types_supported: ['public'],
        id_token_signing_alg_values_supported: ['RS256'],
      })
    }
    if (url.pathname === '/keys') {
      return json({ keys: [{ ...publicKey.export({ format: 'jwk' }), kid: 'k', alg: 'RS256', use: 'sig' }] })
    }
    if (url.pathname === '/authorize') {
      const code = randomUUID()
      const of = (name: string) => url.searchParams.get(name)
      asked.set(code, { nonce: of('nonce'), challenge: of('code_challenge'), redirect: of('redirect_uri')! })
      const back = new URL(of('redirect_uri')!)
      back.searchParams.set('code', code)
      back.searchParams.set('state', of('state')!)
      return response.writeHead(302, { location: back.href }).end()
    }
    if (url.pathname === '/token') {
      const form = new URLSearchParams(await text(request))
      const basic = Buffer.from(request.headers.authorization?.slice(6) ?? '', 'base64').toString()
      seen.clientSecret = form.get('client_secret') ?? basic.split(':')[1] ?? ''
      seen.verifier = form.get('code_verifier') ?? ''
      const code = asked.get(form.get('code') ?? '')
      const challenge = createHash('sha256').update(seen.verifier).digest('base64url')
      if (code === undefined || code.challenge !== challenge) return json({ error: 'invalid_grant' }, 400)
      const now = Math.floor(Date.now() / 1000)
      const claims = { iss: issuer(), aud: 'book', iat: now, exp: now + 300, ...profile }
      const idToken = signed({ ...claims, ...(code.nonce === null ? {} : { nonce: code.nonce }) })
      return json({ access_token: 'a', token_type: 'Bearer', expires_in: 300, id_token: idToken })
    }
    if (url.pathname === '/userinfo') return json(profile)
    return json({}, 404)
  })
  const issuer = () => `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  return { issuer: issuer(), seen }
}

const publicUrl = 'http://book.localhost:7340'
const ada: Profile = { sub: 'u-1', email: 'ada@plant.example', email_verified: true, name: 'Ada at the plant' }

/** Goes to the provider and comes back, as a browser does. */
async function throughProvider(profile: Profile) {
  const { issuer, seen } = await provider(profile)
  const served = await peopledApp({
    publicUrl,
    provider: { issuer, clientId: 'book', clientSecret: 'kept in a file', name: 'The plant' },
  })
  const owner = await firstOwner(served)
  const { code } = (await owner('POST', '/people', { name: 'Ada', role: 'keeper' })).json()
  const invited = asker(served.app)
  expect((await invited('POST', '/session/join', { code, login: 'ada@plant.example', password })).statusCode).toBe(201)

  const ask = asker(served.app)
  expect((await ask('GET', '/session')).json().provider).toBe('The plant')
  const there = await ask('GET', '/session/provider')
  expect(there.statusCode, there.body).toBe(302)
  const back = await fetch(there.headers.location!, { redirect: 'manual' })
  const place = new URL(back.headers.get('location')!)
  expect(place.origin).toBe(publicUrl)
  const kept = ask.cookies()
  const answer = await served.app.inject({ url: place.pathname + place.search, headers: { cookie: kept } })
  const cookies = answer.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ')
  const session = asker(served.app, { cookie: cookies })
  return { answer, session: (await session('GET', '/session')).json(), seen }
}

test('who was invited under the address that the provider has verified comes in as themselves', async () => {
  const { answer, session, seen } = await throughProvider(ada)
  expect([answer.statusCode, answer.headers.location]).toEqual([302, '/'])
  expect(session).toMatchObject({ by: 'session', person: { name: 'Ada' }, role: 'keeper' })
  expect(seen.clientSecret).toBe('kept in a file')
  expect(seen.verifier.length).toBeGreaterThanOrEqual(43)
})

test.each([
  ['somebody nobody invited', { ...ada, sub: 'u-2', email: 'eve@plant.example' }],
  ['an address that the provider has not verified', { ...ada, email_verified: false }],
])('%s stays outside', async (_, profile) => {
  const { answer, session } = await throughProvider(profile)
  expect(answer.headers.location).toContain('error')
  expect(session).toMatchObject({ by: 'nobody', person: null })
})

test('without a provider there is no way to one', async () => {
  const served = await peopledApp()
  expect((await asker(served.app)('GET', '/session/provider')).statusCode).toBe(403)
  expect((await served.app.inject('/api/session-library/callback/openid?code=x')).statusCode).toBe(404)
})
