import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { passOn } from '../people/forward.ts'
import { deviceCookie, type GuardSettings, headersOf } from '../people/guard.ts'
import type { Person } from '../people/identity.ts'
import { addressOf } from '../people/names.ts'
import { providerId } from '../people/provider.ts'
import { notAllowed } from '../people/refusals.ts'

const text = (longest: number) => z.string().min(1).max(longest)
const credentials = z.strictObject({ login: text(200), password: text(1000) })
const firstRun = credentials.extend({ code: text(60), name: text(100) })
const join = credentials.extend({ code: text(60) })
const secondFactor = z.strictObject({ code: text(40) })

/** How somebody gets in and out. */
export function sessionRoutes(api: FastifyInstance, { people, needed }: GuardSettings): void {
  const tags = ['people']

  /** @returns whether a one-time code is wanted as well */
  const signIn = async (
    request: FastifyRequest,
    reply: FastifyReply,
    { login, password }: z.infer<typeof credentials>,
  ): Promise<boolean> => {
    const email = addressOf(login)
    await people.tries.count('address', request.ip)
    await people.tries.count('name', email)
    const { api: library } = await people.library()
    const answer = await library.signInEmail({
      body: { email, password },
      headers: headersOf(request),
      asResponse: true,
    })
    const { twoFactorRedirect = false } = await passOn<{ twoFactorRedirect?: boolean }>(reply, answer)
    await people.tries.forget('name', email)
    await people.tries.uncount('address', request.ip)
    return twoFactorRedirect
  }
  const ofAccount = async (person: Person | null) => {
    if (person === null || person.closedAt !== null) return { secondFactor: false, hasPin: false }
    const { secondFactor, hasPin } = await people.person(person.id)
    return { secondFactor, hasPin }
  }
  const byCode = async (request: FastifyRequest) => {
    await people.tries.count('address', request.ip)
    await people.tries.count('code', request.ip)
  }

  api.get(
    '/session',
    { schema: { summary: 'Who is signed in here, and how one gets in', tags } },
    async ({ identity: { by, person, role, token } }) => ({
      accounts: needed,
      firstRun: needed && !(await people.hasOwner()),
      by,
      person: person === null || person.closedAt !== null ? null : { id: person.id, name: person.name },
      role,
      device: token === null ? null : token,
      ...(await ofAccount(person)),
      provider: people.providerName,
    }),
  )
  api.post<{ Body: z.infer<typeof credentials> }>(
    '/session',
    { schema: { summary: 'Sign in with name and password', tags, body: credentials } },
    async (request, reply) => {
      refuseWithoutAccounts(needed)
      return { secondFactor: await signIn(request, reply, request.body) }
    },
  )
  api.post<{ Body: z.infer<typeof secondFactor> }>(
    '/session/second-factor',
    { schema: { summary: 'The one-time code, or a spare code, after name and password', tags, body: secondFactor } },
    async (request, reply) => {
      await people.tries.count('address', request.ip)
      await people.tries.count('secondFactor', request.ip)
      const { api: library } = await people.library()
      const { code } = request.body
      const asked = { body: { code: code.trim() }, headers: headersOf(request), asResponse: true } as const
      const isOneTime = /^\d{6}$/.test(code.trim())
      await passOn(reply, isOneTime ? await library.verifyTOTP(asked) : await library.verifyBackupCode(asked))
      await people.tries.forget('secondFactor', request.ip)
      await people.tries.uncount('address', request.ip)
      return { secondFactor: false }
    },
  )
  api.delete('/session', { schema: { summary: 'Sign out', tags } }, async (request, reply) => {
    if (request.identity.by === 'session') {
      const { api: library } = await people.library()
      await passOn(reply, await library.signOut({ headers: headersOf(request), asResponse: true }))
    }
    const { by, token } = request.identity
    if (by === 'token' && token?.kind === 'device' && request.headers.authorization === undefined) {
      await people.endToken({ id: token.id })
      reply.clearCookie(deviceCookie, { path: '/' })
    }
    return reply.code(204).send()
  })
  api.post<{ Body: z.infer<typeof firstRun> }>(
    '/session/first-run',
    { schema: { summary: 'The first owner, by the code that the server printed', tags, body: firstRun } },
    async (request, reply) => {
      await byCode(request)
      await people.firstRun(request.body)
      await people.tries.uncount('address', request.ip)
      const { login, password } = request.body
      await signIn(request, reply, { login, password })
      return reply.code(201).send({ secondFactor: false })
    },
  )
  api.post<{ Body: z.infer<typeof join> }>(
    '/session/join',
    { schema: { summary: 'In by a code from an owner, with a name and a password of one’s own', tags, body: join } },
    async (request, reply) => {
      await byCode(request)
      await people.join(request.body)
      await people.tries.uncount('address', request.ip)
      await people.tries.uncount('code', request.ip)
      const { login, password } = request.body
      await signIn(request, reply, { login, password })
      return reply.code(201).send({ secondFactor: false })
    },
  )
  api.get(
    '/session/provider',
    { schema: { summary: 'Sign in at the provider of OpenID Connect; leads there', tags } },
    async (request, reply) => {
      if (people.providerName === null) throw notAllowed('No provider of OpenID Connect is set up here.')
      await people.tries.count('address', request.ip)
      const { api: library } = await people.library()
      const answer = await library.signInSocial({
        body: { provider: providerId, callbackURL: '/', errorCallbackURL: '/', disableRedirect: true },
        headers: headersOf(request),
        asResponse: true,
      })
      const { url } = await passOn<{ url: string }>(reply, answer)
      return reply.redirect(url)
    },
  )
}

function refuseWithoutAccounts(needed: boolean): void {
  if (!needed) throw notAllowed('No accounts are needed at this machine; start with --accounts to ask for them.')
}

/** Where the provider sends people back to; the library does the rest. */
export function providerRoutes(app: FastifyInstance, { people }: GuardSettings): void {
  app.get('/api/session-library/callback/:provider', { schema: { hide: true } }, async (request, reply) => {
    if (people.providerName === null || people.publicUrl === null) return reply.callNotFound()
    const { handler } = await people.library()
    const answer = await handler(new Request(new URL(request.url, people.publicUrl), { headers: headersOf(request) }))
    for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
    return reply.redirect(answer.headers.get('location') ?? '/')
  })
}
