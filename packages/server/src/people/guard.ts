import '@fastify/cookie'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { sendProblem } from '../problems.ts'
import { type Access, accessTo } from './access.ts'
import { type Identity, machine, nobody } from './identity.ts'
import type { People } from './people.ts'
import { notAllowed, signInNeeded } from './refusals.ts'
import { reaches } from './roles.ts'

declare module 'fastify' {
  interface FastifyRequest {
    identity: Identity
  }
  interface FastifyContextConfig {
    access?: Access
  }
}

/** What a device's token is kept in, in a browser. */
export const deviceCookie = 'sumpbook_device'
const base = '/api/v1'

/** What a phone could not deliver before its person left is still taken this long, and held. */
const lateEntriesTaken = 30 * 24 * 3_600_000

/** How the server lets people in. */
export interface GuardSettings {
  people: People
  /** Whether accounts are needed; without them only loopback is let in, with all rights. */
  needed: boolean
}

/** Every request has an identity, every endpoint its least role: who does not reach it is told so before anything is read. */
export function guardAccess(app: FastifyInstance, { people, needed }: GuardSettings): void {
  app.decorateRequest('identity', null as never)
  app.addHook('onRoute', (route) => {
    if (!route.url.startsWith(`${base}/`)) return
    const method = route.method === 'HEAD' ? 'GET' : String(route.method)
    route.config = { ...route.config, access: accessTo(method, route.url.slice(base.length)) }
  })
  app.addHook('onRequest', async (request, reply) => {
    if (!needed && !isLoopbackName(request.headers.host)) {
      const detail = 'Without accounts the book answers on this machine only. Start it with --accounts to open it.'
      return sendProblem(reply, { type: 'about:blank', title: 'Not for the network', status: 403, detail })
    }
    const { access } = request.routeOptions.config
    if (access === undefined) {
      request.identity = nobody
      return
    }
    request.identity = needed ? await identityOf(request, people) : machine
    check(request, access, people.now())
  })
}

function check({ identity, method, routeOptions }: FastifyRequest, { role, scope }: Access, now: Date): void {
  if (role === 'anybody') return
  if (isLate(identity, now) && method === 'PUT' && /\/entries(\/:id)?$/.test(routeOptions.url ?? '')) return
  if (identity.role === null) throw signInNeeded()
  const isUnsaid = identity.token?.kind === 'shared' && identity.person === null
  if (isUnsaid && role !== 'reader') throw signInNeeded()
  if (identity.scopes !== null && (scope === null || !identity.scopes.includes(scope))) {
    throw notAllowed(
      scope === null ? 'Only somebody who signed in may do this.' : `This token was not made to ${scope}.`,
    )
  }
  if (!reaches(identity.role, role)) {
    throw notAllowed(`This needs the role ${role}, and here it is ${identity.role}.`)
  }
}

/** Somebody who left, whose phone still has entries: they are taken and held. */
export const isLate = ({ person }: Identity, now: Date): boolean =>
  person !== null && person.closedAt !== null && Date.parse(person.closedAt) > now.getTime() - lateEntriesTaken

async function identityOf(request: FastifyRequest, people: People): Promise<Identity> {
  const { authorization } = request.headers
  if (authorization !== undefined) {
    const [, token] = /^Bearer\s+(\S+)$/i.exec(authorization) ?? []
    return (token === undefined ? null : await people.byToken(token)) ?? nobody
  }
  const session = /session_token=/.test(request.headers.cookie ?? '')
    ? await people.bySession(headersOf(request))
    : null
  if (session !== null) return session
  const device = request.cookies[deviceCookie]
  return (device === undefined ? null : await people.byToken(device)) ?? nobody
}

/** A request's headers as the library reads them. */
export function headersOf({ headers, ip }: FastifyRequest): Headers {
  const copy = new Headers()
  for (const name of ['cookie', 'user-agent', 'host', 'origin']) {
    const value = headers[name]
    if (typeof value === 'string') copy.set(name, value)
  }
  copy.set('x-forwarded-for', ip)
  return copy
}

/** A page of another name that resolves to this machine must not read the book of who happens to have it open. */
function isLoopbackName(host: string | undefined): boolean {
  if (host === undefined) return true
  const name = host.replace(/:\d+$/, '').toLowerCase()
  return name === 'localhost' || name.endsWith('.localhost') || name === '[::1]' || /^127(\.\d+){3}$/.test(name)
}
