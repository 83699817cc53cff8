import type { Book, Claim } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { withNamesWithin } from '../people/claim-names.ts'
import type { People } from '../people/people.ts'

const query = z.strictObject({
  at: z.iso.datetime({ offset: true }).optional(),
  units: z.enum(['us', 'metric', 'imperial']).optional(),
  person: z
    .string()
    .max(200)
    .describe('for whom: what others have claimed is no news; who is signed in without it')
    .optional(),
})

/** What to do now. */
export function todayRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
  api.get<{ Querystring: z.infer<typeof query> }>(
    '/today',
    {
      schema: {
        summary: 'What to do now, most consequence first, with every sump’s recipe',
        tags: ['today'],
        querystring: query,
      },
    },
    async ({ query: { at, units, person }, identity }) => {
      const today = await book.today({
        person: person ?? identity.person?.id ?? null,
        ...(at === undefined ? {} : { at: new Date(at) }),
        ...(units === undefined ? {} : { reader: { units } }),
      })
      const named = <Line extends { claimedBy: Claim | null }>(lines: readonly Line[]) =>
        Promise.all(lines.map(async (line) => ({ ...line, claimedBy: await withNamesWithin(people, line.claimedBy) })))
      return { ...today, items: await named(today.items), due: await named(today.due) }
    },
  )
}
