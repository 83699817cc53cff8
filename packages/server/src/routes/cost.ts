import { type Book, monthCsv, readCost, readHabits, readLives, readMonth } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import type { People } from '../people/people.ts'

const days = {
  from: z.iso.date().describe('first day, in the shop’s zone'),
  to: z.iso.date().describe('last day, included'),
}
const costQuery = z.strictObject({ ...days, sump: z.string().describe('one sump alone').optional() })
const habitQuery = z.strictObject(days)
const month = z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, { error: 'a month such as 2026-10' })
const monthQuery = z.strictObject({ month, format: z.enum(['json', 'csv']).default('json') })

/** What the coolant costs, and the report of a month. */
export function costRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
  api.get<{ Querystring: z.infer<typeof costQuery> }>(
    '/cost',
    {
      schema: {
        summary: 'What a span of days cost, by part, sump and month, and what was not counted',
        tags: ['cost'],
        querystring: costQuery,
      },
    },
    ({ query }) => book.ask((parts) => readCost(parts, query)),
  )
  api.get<{ Querystring: z.infer<typeof habitQuery> }>(
    '/cost/habits',
    {
      schema: {
        summary: 'What running rich and lean cost in a span of days, and what a steadier hand would have saved',
        tags: ['cost'],
        querystring: habitQuery,
      },
    },
    ({ query }) => book.ask((parts, now) => readHabits(parts, { ...query, at: now })),
  )
  api.get(
    '/cost/life',
    { schema: { summary: 'When each charge would be changed by money alone; condition comes first', tags: ['cost'] } },
    () => book.ask((parts, now) => readLives(parts, { at: now })),
  )
  api.get<{ Querystring: z.infer<typeof monthQuery> }>(
    '/reports/month',
    {
      schema: {
        summary: 'The report of a month, from the entries that stand up to the chain’s head (json), or its table (csv)',
        tags: ['cost'],
        querystring: monthQuery,
      },
    },
    async ({ query }, reply) => {
      const report = await book.ask((parts, at) => readMonth(parts, { month: query.month, at }))
      if (query.format === 'csv') {
        return reply
          .type('text/csv; charset=utf-8')
          .header('content-disposition', `attachment; filename="sumpbook-${query.month}.csv"`)
          .send(monthCsv(report))
      }
      return { ...report, names: Object.fromEntries(await people.names()) }
    },
  )
}
