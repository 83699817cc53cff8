import { type Book, readStock, readWaste } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const query = z
  .strictObject({
    at: z.iso.datetime({ offset: true }).describe('as of this time; now without it').optional(),
    from: z.iso.date().describe('first day of what is listed, in the shop’s zone; 90 days back without it').optional(),
    to: z.iso.date().describe('last day of what is listed; today without it').optional(),
  })
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    error: 'a day not before `from`',
    path: ['to'],
  })

type Query = z.infer<typeof query>

/** What there is of concentrate and of waste. */
export function stockRoutes(api: FastifyInstance, book: Book): void {
  const asked = ({ at, from, to }: Query, now: Date) => ({
    at: at === undefined ? now : new Date(at),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
  })
  api.get<{ Querystring: Query }>(
    '/stock',
    {
      schema: {
        summary: 'Concentrate by fluid and lot, how long it lasts, when to order how much',
        tags: ['stock'],
        querystring: query,
      },
    },
    ({ query }) => book.ask((parts, now) => readStock(parts, asked(query, now))),
  )
  api.get<{ Querystring: Query }>(
    '/waste',
    {
      schema: {
        summary: 'Waste by container, until when it may wait, and what the sumps gave beside it',
        tags: ['stock'],
        querystring: query,
      },
    },
    ({ query }) => book.ask((parts, now) => readWaste(parts, asked(query, now))),
  )
}
