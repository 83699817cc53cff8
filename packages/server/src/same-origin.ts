import type { FastifyInstance } from 'fastify'
import { sendProblem } from './problems.ts'

/** Reading this makes the machine work for a while: a picture on another site's page must not. */
const costly = '/api/v1/backup/archive'

/**
 * Turns away requests that a page of another site makes a browser send: a form post needs no permission of ours to arrive. Programs
 * that are no browser send neither header and are let through.
 *
 * @param publicUrl where people reach the book through a proxy that calls it by another name
 */
export function requireSameOrigin(app: FastifyInstance, publicUrl: string | null): void {
  app.addHook('onRequest', async (request, reply) => {
    const isRead = request.method === 'GET' || request.method === 'HEAD'
    if (isRead && request.routeOptions.url !== costly) return
    const { origin, host } = request.headers
    const foreign = origin !== undefined && origin !== publicUrl && hostOf(origin) !== host
    if (!foreign && request.headers['sec-fetch-site'] !== 'cross-site') return
    const detail = 'A page of another site asked for this; nothing was changed.'
    await sendProblem(reply, { type: 'about:blank', title: 'From another site', status: 403, detail })
  })
}

function hostOf(origin: string): string | null {
  return URL.parse(origin)?.host ?? null
}
