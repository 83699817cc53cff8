import type { FastifyInstance } from 'fastify'

/**
 * One line of JSON a request: its number, method, route as declared, status, milliseconds, and the person's id. Never a body, an address
 * as asked (it may hold names), a header, a name, a token or a password.
 */
export function logRequests(app: FastifyInstance): void {
  app.addHook('onResponse', async (request, reply) => {
    const { method, routeOptions, identity } = request
    request.log.info(
      {
        method,
        route: routeOptions.url ?? 'none',
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime * 10) / 10,
        person: identity?.person?.id ?? null,
      },
      'answered',
    )
  })
}
