import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import type { GuardSettings } from '../people/guard.ts'
import { notAllowed } from '../people/refusals.ts'
import { roles } from '../people/roles.ts'
import { keepOnDevice } from './me.ts'

const role = z.enum(roles)
const name = z.string().trim().min(1).max(100)
const newPerson = z.strictObject({ name, role })
const change = z.strictObject({ name: name.optional(), role: role.optional(), closed: z.boolean().optional() })
const byId = z.object({ id: z.string().max(100) })
const newDevice = z.strictObject({
  name,
  role: z.enum(['reader', 'operator', 'keeper']).default('operator'),
  here: z.boolean().default(false),
})
const switching = z.strictObject({ person: z.string().max(100), pin: z.string().max(20) })

/** The people of the book and their devices. */
export function peopleRoutes(api: FastifyInstance, { people }: GuardSettings): void {
  const tags = ['people']
  api.get(
    '/people',
    { schema: { summary: 'Who is who; for owners also names to sign in with and closed accounts', tags } },
    async ({ identity }) => {
      const all = await people.list()
      if (identity.role === 'owner') return { people: all }
      return { people: all.map(({ id, name: called, role: has }) => ({ id, name: called, role: has })) }
    },
  )
  api.post<{ Body: z.infer<typeof newPerson> }>(
    '/people',
    { schema: { summary: 'Invite somebody: a code, shown this once, lets them in', tags, body: newPerson } },
    async ({ body }, reply) => reply.code(201).send(await people.add(body)),
  )
  api.put<{ Params: { id: string }; Body: z.infer<typeof change> }>(
    '/people/:id',
    {
      schema: { summary: 'Another name or role; close an account or open it again', tags, params: byId, body: change },
    },
    async ({ params, body }) => {
      await people.change(params.id, {
        ...(body.name === undefined ? {} : { name: body.name }),
        ...(body.role === undefined ? {} : { role: body.role }),
        ...(body.closed === undefined ? {} : { closed: body.closed }),
      })
      return people.person(params.id)
    },
  )
  api.post<{ Params: { id: string } }>(
    '/people/:id/code',
    { schema: { summary: 'A new code for somebody who lost code or password', tags, params: byId } },
    async ({ params }, reply) => reply.code(201).send(await people.newCode(params.id)),
  )
  api.get<{ Params: { id: string } }>(
    '/people/:id/sessions',
    { schema: { summary: 'Where somebody is signed in', tags, params: byId } },
    async ({ params }) => ({ sessions: await people.sessions((await people.person(params.id)).id) }),
  )
  api.delete<{ Params: { id: string; session: string } }>(
    '/people/:id/sessions/:session',
    { schema: { summary: 'End somebody’s session', tags, params: byId.extend({ session: z.string().max(100) }) } },
    async ({ params }, reply) => {
      await people.endSession(params.id, params.session)
      return reply.code(204).send()
    },
  )
  api.get<{ Params: { id: string } }>(
    '/people/:id/tokens',
    { schema: { summary: 'Somebody’s tokens and phones', tags, params: byId } },
    async ({ params }) => ({ tokens: await people.tokensOf((await people.person(params.id)).id) }),
  )
  api.delete<{ Params: { id: string; token: string } }>(
    '/people/:id/tokens/:token',
    { schema: { summary: 'End somebody’s token or phone', tags, params: byId.extend({ token: z.string().max(100) }) } },
    async ({ params }, reply) => {
      await people.endToken({ id: params.token, person: params.id })
      return reply.code(204).send()
    },
  )
  deviceRoutes(api, { people })
}

function deviceRoutes(api: FastifyInstance, { people }: Pick<GuardSettings, 'people'>): void {
  const tags = ['people']
  api.get('/devices', { schema: { summary: 'Phones and shared devices of everybody', tags } }, async () => ({
    devices: await people.devices(),
  }))
  api.post<{ Body: z.infer<typeof newDevice> }>(
    '/devices',
    {
      schema: {
        summary:
          'A shared device, on which people say by PIN who they are; `here`: this browser, else its token, shown this once',
        tags,
        body: newDevice,
      },
    },
    async ({ identity, body }, reply) => {
      const made = await people.makeSharedDevice({
        name: body.name,
        role: body.role,
        madeBy: identity.person?.id ?? null,
      })
      if (!body.here) return reply.code(201).send(made)
      keepOnDevice(reply, made.token, people.publicUrl)
      return reply.code(201).send({ id: made.id })
    },
  )
  api.delete<{ Params: { id: string } }>(
    '/devices/:id',
    { schema: { summary: 'End a device', tags, params: byId } },
    async ({ params }, reply) => {
      await people.endToken({ id: params.id })
      return reply.code(204).send()
    },
  )
  api.get(
    '/device/people',
    { schema: { summary: 'Who can say on this shared device who they are', tags } },
    async ({ identity: { token } }) => {
      if (token?.kind !== 'shared') throw notAllowed('This is nobody’s shared device: sign in instead.')
      return { people: await people.withPin() }
    },
  )
  api.put<{ Body: z.infer<typeof switching> }>(
    '/device/person',
    { schema: { summary: 'Say on a shared device, by PIN, who one is', tags, body: switching } },
    async ({ identity: { token }, body }, reply) => {
      if (token === null) throw notAllowed('This is nobody’s shared device: sign in instead.')
      await people.switchTo(token, body.person, body.pin)
      return reply.code(204).send()
    },
  )
  api.delete(
    '/device/person',
    { schema: { summary: 'Nobody is at this shared device any more', tags } },
    async ({ identity: { token } }, reply) => {
      if (token === null) throw notAllowed('This is nobody’s shared device: sign in instead.')
      await people.leave(token.id)
      return reply.code(204).send()
    },
  )
}
