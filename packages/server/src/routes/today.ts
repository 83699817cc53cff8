import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const query = z.strictObject({
  at: z.iso.datetime({ offset: true }).optional(),
  units: z.enum(['us', 'metric', 'imperial']).optional(),
})

/** What to do now. */
export function todayRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Querystring: z.infer<typeof query> }>(
    '/today',
    {
      schema: {
        summary: 'What to do now, most consequence first, with every sump’s recipe',
        tags: ['today'],
        querystring: query,
      },
    },
    ({ query: { at, units } }) =>
      book.today({
        ...(at === undefined ? {} : { at: new Date(at) }),
        ...(units === undefined ? {} : { reader: { units } }),
      }),
  )
}
