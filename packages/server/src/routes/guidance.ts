import {
  askedTimes,
  type Book,
  readAnalytes,
  readCalendar,
  readGuidance,
  readSamples,
  readSumpCalendar,
} from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const query = z.strictObject({ at: z.iso.datetime({ offset: true }).optional() })
const sumpId = z.object({ id: z.string() })

type Query = z.infer<typeof query>

/** Whose guidance the shop goes by, which tests it asks for when, and samples whose results come later. */
export function guidanceRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Querystring: Query }>(
    '/guidance',
    {
      schema: {
        summary: 'Guidance packs with their sources, what the shop has chosen, and where they differ',
        tags: ['guidance'],
        querystring: query,
      },
    },
    ({ query }) => book.ask((parts, now) => readGuidance(parts, askedTimes(query.at, now))),
  )
  api.get<{ Querystring: Query }>(
    '/calendar',
    {
      schema: {
        summary: 'Which test of which sump is due when, and what the last results ask for',
        tags: ['guidance'],
        querystring: query,
      },
    },
    ({ query }) => book.ask((parts, now) => readCalendar(parts, askedTimes(query.at, now))),
  )
  api.get<{ Params: { id: string }; Querystring: Query }>(
    '/sumps/:id/calendar',
    {
      schema: {
        summary: 'One sump’s tests, findings and limits, each with where it comes from',
        tags: ['guidance'],
        params: sumpId,
        querystring: query,
      },
    },
    ({ params: { id }, query }) => book.ask((parts, now) => readSumpCalendar(parts, id, askedTimes(query.at, now))),
  )
  api.get<{ Params: { id: string }; Querystring: Query }>(
    '/sumps/:id/analytes',
    {
      schema: {
        summary: 'What laboratory and strips found of one sump, series by series with their trends',
        tags: ['guidance'],
        params: sumpId,
        querystring: query,
      },
    },
    ({ params: { id }, query }) => book.ask((parts, now) => readAnalytes(parts, id, askedTimes(query.at, now))),
  )
  api.get<{ Querystring: Query }>(
    '/samples',
    {
      schema: {
        summary: 'Samples that wait for their result, those answered, and results that answer none',
        tags: ['guidance'],
        querystring: query,
      },
    },
    ({ query }) => book.ask((parts, now) => readSamples(parts, askedTimes(query.at, now))),
  )
}
