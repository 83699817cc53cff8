import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const query = z.strictObject({
  since: z.coerce.number().int().min(0).default(0),
  limit: z.coerce.number().int().min(1).max(5000).default(1000),
})

/** The feed of what arrived, in order of arrival, without gaps: a device reads on from the last `seq` it has. */
export function changesRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Querystring: z.infer<typeof query> }>(
    '/changes',
    { schema: { summary: 'Entries in order of arrival, after `since`', tags: ['entries'], querystring: query } },
    async ({ query: { since, limit } }) => {
      const entries = await book.store.entries({ order: 'arrival', after: { seq: since }, limit })
      return {
        changes: entries.map(({ seq, receivedAt, body }) => ({ seq, receivedAt, entry: JSON.parse(body) as unknown })),
        since: entries.at(-1)?.seq ?? since,
        head: (await book.store.head()).seq,
      }
    },
  )
}
