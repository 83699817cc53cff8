import { createHmac } from 'node:crypto'
import { expect, test } from 'vitest'
import { asker, firstOwner, invited, password, peopledApp } from './testing.ts'

/** The one-time code of a moment, RFC 6238 with SHA-1, 30 s, 6 digits. */
function oneTimeCode(secret: string, moment = Date.now()): string {
  const bits = [...secret]
    .map((sign) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'.indexOf(sign).toString(2).padStart(5, '0'))
    .join('')
  const key = Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)))
  const counter = Buffer.alloc(8)
  counter.writeBigUInt64BE(BigInt(Math.floor(moment / 30_000)))
  const mac = createHmac('sha1', key).update(counter).digest()
  const from = mac.at(-1)! & 15
  return String((mac.readUInt32BE(from) & 0x7fffffff) % 1_000_000).padStart(6, '0')
}

test('the code is that of RFC 6238, appendix B', () => {
  // "12345678901234567890" in base 32; at 59 s the 8-digit code is 94287082, of which six digits are 287082.
  expect(oneTimeCode('GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ', 59_000)).toBe('287082')
})

async function withSecondFactor() {
  const served = await peopledApp()
  const owner = await firstOwner(served)
  const begun = (await owner('POST', '/me/second-factor', { password })).json()
  expect(begun.uri).toMatch(/^otpauth:\/\/totp\/Sumpbook/)
  expect(begun.spareCodes).toHaveLength(10)
  expect((await owner('PUT', '/me/second-factor', { code: oneTimeCode(begun.secret) })).statusCode).toBe(204)
  return { served, owner, ...(begun as { secret: string; spareCodes: string[] }) }
}

test('with a second factor the password alone opens nothing', async () => {
  const { served, secret } = await withSecondFactor()
  const ask = asker(served.app)
  expect((await ask('POST', '/session', { login: 'ada', password })).json()).toEqual({ secondFactor: true })
  expect((await ask('GET', '/book')).statusCode).toBe(401)
  const wrong = oneTimeCode(secret) === '000000' ? '000001' : '000000'
  expect((await ask('POST', '/session/second-factor', { code: wrong })).statusCode).toBe(401)
  expect((await ask('POST', '/session/second-factor', { code: oneTimeCode(secret) })).statusCode).toBe(200)
  expect((await ask('GET', '/session')).json()).toMatchObject({ by: 'session', role: 'owner' })
})

test('a spare code lets in once', async () => {
  const { served, spareCodes } = await withSecondFactor()
  for (const status of [200, 401]) {
    const ask = asker(served.app)
    await ask('POST', '/session', { login: 'ada', password })
    expect((await ask('POST', '/session/second-factor', { code: spareCodes[0]! })).statusCode).toBe(status)
  }
})

test('one-time codes are not guessed', async () => {
  const { served, secret } = await withSecondFactor()
  const ask = asker(served.app)
  await ask('POST', '/session', { login: 'ada', password })
  const wrong = oneTimeCode(secret) === '000000' ? '000001' : '000000'
  const answers = []
  for (let n = 0; n < 6; n++) answers.push((await ask('POST', '/session/second-factor', { code: wrong })).statusCode)
  expect(answers.at(-1)).toBe(429)
  expect((await ask('POST', '/session/second-factor', { code: oneTimeCode(secret) })).statusCode).toBe(429)
})

test('it is taken away with the password, or by a new code from an owner', async () => {
  const { served, owner } = await withSecondFactor()
  expect((await owner('DELETE', '/me/second-factor', { password: 'something else' })).statusCode).toBe(401)
  expect((await owner('DELETE', '/me/second-factor', { password })).statusCode).toBe(204)
  expect((await asker(served.app)('POST', '/session', { login: 'ada', password })).json()).toEqual({
    secondFactor: false,
  })
  const ben = await invited(served, owner, { name: 'Ben', role: 'reader' })
  const { secret } = (await ben.ask('POST', '/me/second-factor', { password })).json()
  await ben.ask('PUT', '/me/second-factor', { code: oneTimeCode(secret) })
  expect((await owner('GET', '/people')).json().people).toMatchObject([{}, { name: 'Ben', secondFactor: true }])
  const { code } = (await owner('POST', `/people/${ben.id}/code`)).json()
  const back = asker(served.app)
  expect((await back('POST', '/session/join', { code, login: 'ben', password })).json()).toEqual({
    secondFactor: false,
  })
  expect((await ben.ask('GET', '/book')).statusCode).toBe(401)
})
