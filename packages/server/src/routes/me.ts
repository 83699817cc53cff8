import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'
import { passOn } from '../people/forward.ts'
import { deviceCookie, type GuardSettings, headersOf } from '../people/guard.ts'
import { personIn } from '../people/identity.ts'
import { scopes } from '../people/roles.ts'

const password = z.string().min(1).max(1000)
const pin = z.strictObject({
  pin: z
    .string()
    .regex(/^\d{4,8}$/, '4 to 8 digits')
    .nullable(),
  password,
})
const newPassword = z.strictObject({ password, newPassword: password })
const ofPassword = z.strictObject({ password })
const ofCode = z.strictObject({ code: z.string().regex(/^\d{6}$/, '6 digits') })
const token = z.strictObject({
  name: z.string().trim().min(1).max(100),
  scopes: z.array(z.enum(scopes)).min(1),
  days: z.number().int().min(1).max(366),
})
const device = z.strictObject({ name: z.string().trim().min(1).max(100) })
const byId = z.object({ id: z.string().max(100) })

/** What everybody does with their own account. */
export function meRoutes(api: FastifyInstance, { people }: GuardSettings): void {
  const tags = ['people']
  /** A password is asked for again before what would outlast a session somebody left open. */
  const confirm = async (id: string, given: string) => {
    await people.tries.count('name', id)
    await people.checkPassword(id, given)
    await people.tries.forget('name', id)
  }

  api.get('/me/sessions', { schema: { summary: 'Where one is signed in', tags } }, async ({ identity }) => ({
    sessions: (await people.sessions(personIn(identity).id)).map((line) => ({
      ...line,
      isThis: line.id === identity.session,
    })),
  }))
  api.delete<{ Params: { id: string } }>(
    '/me/sessions/:id',
    { schema: { summary: 'End one of one’s sessions', tags, params: byId } },
    async ({ identity, params }, reply) => {
      await people.endSession(personIn(identity).id, params.id)
      return reply.code(204).send()
    },
  )
  api.put<{ Body: z.infer<typeof newPassword> }>(
    '/me/password',
    { schema: { summary: 'Another password; one’s other sessions end', tags, body: newPassword } },
    async ({ identity, body }, reply) => {
      const { id } = personIn(identity)
      await confirm(id, body.password)
      await people.changePassword(id, body.newPassword, identity.session)
      return reply.code(204).send()
    },
  )
  api.put<{ Body: z.infer<typeof pin> }>(
    '/me/pin',
    { schema: { summary: 'The PIN for shared devices; null takes it away', tags, body: pin } },
    async ({ identity, body }, reply) => {
      const { id } = personIn(identity)
      await confirm(id, body.password)
      await people.setPin(id, body.pin)
      return reply.code(204).send()
    },
  )
  secondFactorRoutes(api, { people, confirm })
  api.get('/me/tokens', { schema: { summary: 'One’s tokens and phones', tags } }, async ({ identity }) => ({
    tokens: await people.tokensOf(personIn(identity).id),
  }))
  api.post<{ Body: z.infer<typeof token> }>(
    '/me/tokens',
    { schema: { summary: 'A token for a program; shown this once', tags, body: token } },
    async ({ identity, body }, reply) => reply.code(201).send(await people.makePersonalToken(personIn(identity), body)),
  )
  api.delete<{ Params: { id: string } }>(
    '/me/tokens/:id',
    { schema: { summary: 'End a token or a phone of one’s own', tags, params: byId } },
    async ({ identity, params }, reply) => {
      await people.endToken({ id: params.id, person: personIn(identity).id })
      return reply.code(204).send()
    },
  )
  api.post<{ Body: z.infer<typeof device> }>(
    '/me/devices',
    { schema: { summary: 'Stay signed in on this phone for long', tags, body: device } },
    async ({ identity, body }, reply) => {
      const { id, token: secret } = await people.makeDevice(personIn(identity), body.name)
      keepOnDevice(reply, secret, people.publicUrl)
      return reply.code(201).send({ id })
    },
  )
}

/** The device's browser keeps its token where no script reads it. */
export function keepOnDevice(reply: FastifyReply, token: string, publicUrl: string | null): void {
  reply.setCookie(deviceCookie, token, {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: publicUrl?.startsWith('https:') ?? false,
    maxAge: 400 * 24 * 60 * 60,
  })
}

function secondFactorRoutes(
  api: FastifyInstance,
  { people, confirm }: Pick<GuardSettings, 'people'> & { confirm(id: string, password: string): Promise<void> },
): void {
  const tags = ['people']
  api.post<{ Body: z.infer<typeof ofPassword> }>(
    '/me/second-factor',
    {
      schema: {
        summary: 'Begin with one-time codes: the secret for the app that makes them, and spare codes, shown this once',
        tags,
        body: ofPassword,
      },
    },
    async (request, reply) => {
      await confirm(personIn(request.identity).id, request.body.password)
      const { api: library } = await people.library()
      const answer = await library.enableTwoFactor({
        body: { password: request.body.password },
        headers: headersOf(request),
        asResponse: true,
      })
      const { totpURI, backupCodes } = await passOn<{ totpURI: string; backupCodes: string[] }>(reply, answer)
      return { uri: totpURI, secret: new URL(totpURI).searchParams.get('secret'), spareCodes: backupCodes }
    },
  )
  api.put<{ Body: z.infer<typeof ofCode> }>(
    '/me/second-factor',
    { schema: { summary: 'The first one-time code: from now on they are asked for', tags, body: ofCode } },
    async (request, reply) => {
      await people.tries.count('secondFactor', personIn(request.identity).id)
      const { api: library } = await people.library()
      await passOn(
        reply,
        await library.verifyTOTP({ body: request.body, headers: headersOf(request), asResponse: true }),
      )
      return reply.code(204).send()
    },
  )
  api.delete<{ Body: z.infer<typeof ofPassword> }>(
    '/me/second-factor',
    { schema: { summary: 'No more one-time codes', tags, body: ofPassword } },
    async (request, reply) => {
      await confirm(personIn(request.identity).id, request.body.password)
      const { api: library } = await people.library()
      await passOn(
        reply,
        await library.disableTwoFactor({
          body: { password: request.body.password },
          headers: headersOf(request),
          asResponse: true,
        }),
      )
      return reply.code(204).send()
    },
  )
}
