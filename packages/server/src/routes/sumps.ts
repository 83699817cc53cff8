import { type Book, sumpHistory } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import type { People } from '../people/people.ts'
import { withNames } from '../people/with-names.ts'

/** Where every sump stands, in walking order, and one sump's history. */
export function sumpRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
  api.get(
    '/sumps',
    { schema: { summary: 'Where every sump stands, in walking order', tags: ['sumps'] } },
    async () => ({ sumps: await book.sumps() }),
  )
  api.get<{ Params: { id: string } }>(
    '/sumps/:id',
    { schema: { summary: 'One sump: now, and its history', tags: ['sumps'], params: z.object({ id: z.string() }) } },
    async ({ params: { id } }) => {
      const history = await withNames(people, await sumpHistory(book.store, id))
      const [now] = await book.sumps({ sump: id })
      return { ...now, history }
    },
  )
}
