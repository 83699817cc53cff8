import { type Book, inWalkingOrder, sumpHistory, type Today, type TodayItem } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

/** Where every sump stands, in walking order, and one sump's history. */
export function sumpRoutes(api: FastifyInstance, book: Book): void {
  api.get(
    '/sumps',
    { schema: { summary: 'Where every sump stands, in walking order', tags: ['sumps'] } },
    async () => ({
      sumps: sumpsOf(await book.today()),
    }),
  )
  api.get<{ Params: { id: string } }>(
    '/sumps/:id',
    { schema: { summary: 'One sump: now, and its history', tags: ['sumps'], params: z.object({ id: z.string() }) } },
    async ({ params: { id } }) => {
      const history = await sumpHistory(book.store, id)
      const now = sumpsOf(await book.today()).find(({ sump }) => sump === id)
      return { ...now, history }
    },
  )
}

const sumpsOf = ({ items, calm }: Today): TodayItem[] => [...items, ...calm].sort(inWalkingOrder)
