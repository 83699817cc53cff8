import { type Book, readClaims, readCleanoutPlan, readJob, readJobs, readSideBySide, readUpkeep } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { withNamesWithin } from '../people/claim-names.ts'
import type { People } from '../people/people.ts'

const ofId = z.object({ id: z.string() })
const units = z.enum(['us', 'metric', 'imperial']).optional()
const figure = z.coerce.number()

const planQuery = z.strictObject({
  volume: figure.gt(0).max(1e6).describe('litres at the full mark; the book’s without it').optional(),
  heldBack: figure.min(0).max(1e6).describe('litres that stay at each drain').optional(),
  cleanerPercent: figure.min(0).max(100).optional(),
  hours: figure.min(0).max(1000).describe('for which the cleaner runs').optional(),
  rinsePercent: figure.min(0).max(100).optional(),
  rinseFraction: figure.min(0).max(1).optional(),
  rinses: z.coerce.number().int().min(0).max(10).optional(),
  target: figure.min(0).max(100).optional(),
  water: z.string().describe('id of the water of the fresh charge').optional(),
  fluid: z.string().describe('id of another fluid that comes in').optional(),
  cleaner: z.string().max(300).optional(),
  solids: z.enum(['little', 'much']).optional(),
  foul: z.enum(['true', 'false']).optional(),
  on: z.iso.date().describe('the day it is planned for').optional(),
  units,
})

const sideBySideQuery = z.strictObject({
  sumps: z.string().min(1).max(6000).describe('ids apart by commas, at most 12; a comma within an id as %2C'),
  people: z.coerce.number().int().min(1).max(20).default(1),
  pumps: z.coerce.number().int().min(1).max(20).default(1),
  start: z.iso.datetime({ offset: true }).optional(),
})

/** Job sheets, plans of cleanouts, and the calendar of upkeep. What is signed is written as entries. */
export function jobRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
  api.get('/jobs', { schema: { summary: 'Job sheets under way, planned and done', tags: ['jobs'] } }, async () =>
    withNamesWithin(people, await book.ask((parts, at) => readJobs(parts, { at }))),
  )
  api.get(
    '/claims',
    { schema: { summary: 'Who has said that they do what, as it stands now', tags: ['jobs'] } },
    async () => {
      const claims = await book.ask(({ journal }, until) => readClaims(journal, { until }))
      return withNamesWithin(people, { claims: [...claims.values()] })
    },
  )
  api.get<{ Params: { id: string } }>(
    '/jobs/:id',
    { schema: { summary: 'One job with its sheet, step by step', tags: ['jobs'], params: ofId } },
    async ({ params: { id } }) => withNamesWithin(people, await book.ask((parts, at) => readJob(parts, id, { at }))),
  )
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof planQuery> }>(
    '/sumps/:id/cleanout-plan',
    {
      schema: {
        summary: 'What a cleanout of a sump takes: steps, litres, hours, waste, and the entry that opens its job',
        tags: ['jobs'],
        params: ofId,
        querystring: planQuery,
      },
    },
    ({ params: { id }, query: { foul, units, ...query } }) =>
      book.ask((parts, at) =>
        readCleanoutPlan(parts, id, {
          ...given(query),
          at,
          ...(foul === undefined ? {} : { foul: foul === 'true' }),
          ...(units === undefined ? {} : { reader: { units } }),
        }),
      ),
  )
  api.get<{ Querystring: z.infer<typeof sideBySideQuery> }>(
    '/cleanouts/side-by-side',
    {
      schema: {
        summary: 'When each of several machines stands, cleaned out with few pumps and few people',
        tags: ['jobs'],
        querystring: sideBySideQuery,
      },
    },
    ({ query: { sumps, people: hands, pumps, start } }) =>
      book.ask((parts, at) =>
        readSideBySide(parts, {
          at,
          sumps: sumps.split(',').map(decodeURIComponent),
          people: hands,
          pumps,
          ...(start === undefined ? {} : { start: new Date(start) }),
        }),
      ),
  )
  api.get(
    '/upkeep',
    { schema: { summary: 'Upkeep with the day it is due, and what is proposed', tags: ['jobs'] } },
    async () => withNamesWithin(people, await book.ask((parts, at) => readUpkeep(parts, { at }))),
  )
}

/** Only what was asked: `exactOptionalPropertyTypes` tells a missing field from one that is undefined. */
const given = <T extends object>(query: T) =>
  Object.fromEntries(Object.entries(query).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>
  }
