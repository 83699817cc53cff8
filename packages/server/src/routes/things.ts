import { type Book, measurementsOf } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

/** What was measured of the things of the shop. */
export function thingRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Params: { kind: string; id: string } }>(
    '/things/:kind/:id/measurements',
    {
      schema: {
        summary: 'A water’s analyses, a mixer’s or an instrument’s checks, oldest first',
        tags: ['book'],
        params: z.object({ kind: z.enum(['water', 'mixer', 'instrument']), id: z.string() }),
      },
    },
    async ({ params }) => ({ measurements: await measurementsOf(book.store, params) }),
  )
}
