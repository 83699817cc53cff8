import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

/** Only what the server itself gives out is loaded and run; no page of another site shows ours in a frame. */
const contentSecurityPolicy = {
  // The library's own policy asks for `upgrade-insecure-requests`: on a plain-http address of the shop's network it would break every asset.
  useDefaults: false,
  directives: {
    defaultSrc: ["'self'"],
    imgSrc: ["'self'", 'data:', 'blob:'],
    // The worker that keeps the app's files on the phone, and what a home screen needs to know of it.
    workerSrc: ["'self'"],
    manifestSrc: ["'self'"],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
  },
}
const aYear = 365 * 24 * 60 * 60

/**
 * What every answer tells a browser. Where the book is reached by https alone, browsers are told to insist on it, on this name and not on
 * others under it, which are not ours. An answer of the API is never kept by a browser or by what lies between, unless it says so itself.
 */
export async function secureHeaders(app: FastifyInstance, { https }: { https: boolean }): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy,
    hsts: https ? { maxAge: aYear, includeSubDomains: false } : false,
    // Browsers ignore it on plain http and complain of it there.
    crossOriginOpenerPolicy: https ? { policy: 'same-origin' } : false,
  })
  app.addHook('onSend', async (request, reply) => {
    if (request.url.startsWith('/api/') && !reply.hasHeader('cache-control')) reply.header('cache-control', 'no-store')
  })
}
