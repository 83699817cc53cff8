import { join } from 'node:path'
import compress from '@fastify/compress'
import cookie from '@fastify/cookie'
import multipart from '@fastify/multipart'
import fastifyStatic from '@fastify/static'
import swagger from '@fastify/swagger'
import type { Book } from '@sumpbook/book'
import type { Speech } from '@sumpbook/fluid'
import Fastify, { type FastifyInstance, type FastifyReply, type FastifyServerOptions, LogController } from 'fastify'
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
  validatorCompiler,
} from 'fastify-type-provider-zod'
import { guardAccess } from './people/guard.ts'
import { openPeople, type People } from './people/people.ts'
import { handleError, sendProblem } from './problems.ts'
import { attachmentRoutes } from './routes/attachments.ts'
import { backupRoutes } from './routes/backup.ts'
import { bookRoutes } from './routes/book.ts'
import { calcRoutes } from './routes/calc.ts'
import { changesRoutes } from './routes/changes.ts'
import { costRoutes } from './routes/cost.ts'
import { diagnosisRoutes } from './routes/diagnosis.ts'
import { doseAndHandoverRoutes } from './routes/doses-and-handover.ts'
import { entryRoutes } from './routes/entries.ts'
import { estimateRoutes } from './routes/estimate.ts'
import { guidanceRoutes } from './routes/guidance.ts'
import { healthRoutes } from './routes/health.ts'
import { importRoutes } from './routes/import.ts'
import { jobRoutes } from './routes/jobs.ts'
import { meRoutes } from './routes/me.ts'
import { peopleRoutes } from './routes/people.ts'
import { planRoutes } from './routes/plan.ts'
import { providerRoutes, sessionRoutes } from './routes/session.ts'
import { stockRoutes } from './routes/stock.ts'
import { sumpRoutes } from './routes/sumps.ts'
import { thingRoutes } from './routes/things.ts'
import { todayRoutes } from './routes/today.ts'
import { requireSameOrigin } from './same-origin.ts'
import { secureHeaders } from './secure-headers.ts'
import { settleLater } from './settle-later.ts'
import { speakAsAsked, speechHeaders } from './speak-as-asked.ts'
import { logRequests } from './watch/log-requests.ts'
import { watchMetrics } from './watch/metrics.ts'

/** The largest body taken: a book file of several hundred thousand entries. */
const largestBody = 200 * 1024 * 1024

/** What the server is made of; building it opens no port. */
export interface AppParts {
  book: Book
  /** Folder of the built web app; without it only the API answers. */
  webRoot?: string
  version: string
  /** The folder of what lies beside the book in files of its own, its attachments; without it none are kept. */
  folder?: string
  /** The book's people; without them, those that the book's store keeps. */
  people?: People
  /** Whether accounts are needed; without, everybody who reaches the server by a name of this machine may do everything. */
  accounts?: boolean
  /** Whether a proxy on this machine says where a request comes from. */
  behindProxy?: boolean
  /** Whether people reach the book by https alone, so that their browsers may insist on it from then on. */
  https?: boolean
  /** What to speak https with, PEM; without it plain http, as a proxy on this machine takes it. */
  tls?: { cert: string; key: string }
  /** How long after the start and after a write the book keeps how far its estimate has come; without it, it never does. */
  settleAfterMs?: number
  /** How it is spoken to who names no language that is spoken here; English without it. */
  speech?: Speech
  logger?: FastifyServerOptions['logger']
}

/** The HTTP API under `/api/v1`, described at `/api/openapi.json`, and the web app beside it. */
export async function buildApp(parts: AppParts): Promise<FastifyInstance> {
  const { book, webRoot, version, settleAfterMs, logger = false, accounts: needed = false, behindProxy = false } = parts
  const people = parts.people ?? (await openPeople(book.store))
  const app = Fastify({
    logger,
    bodyLimit: largestBody,
    forceCloseConnections: true,
    // An id has up to 200 signs, each up to twelve in an address.
    routerOptions: { maxParamLength: 2400 },
    frameworkErrors: (error, request, reply) => void handleError(error, request, reply as FastifyReply),
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: behindProxy ? 'loopback' : false,
    ...(parts.tls === undefined ? {} : { https: parts.tls }),
  }) as FastifyInstance
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  app.setErrorHandler(handleError)
  speakAsAsked(app, parts.speech)
  requireSameOrigin(app, people.publicUrl)
  // By gzip alone: it costs a fraction of what others do. What comes in is read as it is, so that little cannot turn out to be much.
  await app.register(compress, { encodings: ['gzip'], globalDecompression: false, threshold: 2_048 })
  await app.register(cookie)
  guardAccess(app, { people, needed })
  logRequests(app)
  watchMetrics(app, book)
  if (settleAfterMs !== undefined) settleLater(app, book, settleAfterMs)
  await secureHeaders(app, { https: parts.https ?? false })
  await app.register(multipart, { limits: { fileSize: largestBody, files: 1 } })
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Sumpbook', version, description: 'The logbook of water-mixed coolant.' },
      components: {
        securitySchemes: {
          token: { type: 'http', scheme: 'bearer', description: 'A token of a person or a device' },
          session: { type: 'apiKey', in: 'cookie', name: 'sumpbook.session_token', description: 'Somebody signed in' },
        },
      },
      security: [{ token: [] }, { session: [] }],
    },
    transform: ({ schema = {}, ...route }) =>
      jsonSchemaTransform({ ...route, schema: { headers: speechHeaders, ...schema } }),
    transformObject: jsonSchemaTransformObject,
  })
  await app.register(
    async (api) => {
      sessionRoutes(api, { people, needed })
      meRoutes(api, { people, needed })
      peopleRoutes(api, { people, needed })
      entryRoutes(api, { book, people })
      todayRoutes(api, { book, people })
      sumpRoutes(api, { book, people })
      estimateRoutes(api, book)
      planRoutes(api, book)
      jobRoutes(api, { book, people })
      guidanceRoutes(api, book)
      calcRoutes(api)
      costRoutes(api, { book, people })
      diagnosisRoutes(api, book)
      importRoutes(api, book)
      changesRoutes(api, book)
      await attachmentRoutes(api, parts.folder === undefined ? null : join(parts.folder, 'attachments'))
      backupRoutes(api, book, parts.folder ?? null)
      bookRoutes(api, book, version)
      thingRoutes(api, book)
      stockRoutes(api, book)
      doseAndHandoverRoutes(api, { book, people })
    },
    { prefix: '/api/v1' },
  )
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger())
  providerRoutes(app, { people, needed })
  healthRoutes(app, book)
  await serveWeb(app, webRoot)
  return app
}

async function serveWeb(app: FastifyInstance, webRoot: string | undefined): Promise<void> {
  if (webRoot !== undefined) {
    await app.register(fastifyStatic, {
      root: webRoot,
      preCompressed: true,
      setHeaders: (reply, path) => {
        // Files under assets carry their content's hash in their name; the page that names them is asked for anew.
        reply.header('cache-control', path.includes('assets') ? 'public, max-age=31536000, immutable' : 'no-cache')
      },
    })
  }
  app.setNotFoundHandler((request, reply) => {
    const wantsPage =
      request.method === 'GET' && !request.url.startsWith('/api/') && !/\.\w+$/.test(request.url.split('?')[0]!)
    if (wantsPage && webRoot !== undefined) return reply.header('cache-control', 'no-cache').sendFile('index.html')
    return sendProblem(reply, {
      type: 'about:blank',
      title: 'Not found',
      status: 404,
      detail: `There is nothing at ${request.url}.`,
    })
  })
}
