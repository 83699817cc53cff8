import { type Book, readDoses, readHandovers } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { withNamesWithin } from '../people/claim-names.ts'
import type { People } from '../people/people.ts'
import { reaches } from '../people/roles.ts'

const units = z.enum(['us', 'metric', 'imperial']).optional()
const doseQuery = z.strictObject({
  additive: z.string().describe('id of an additive of the shop; all of them without it').optional(),
  cause: z.string().max(2000).describe('what is behind a falling pH, where its cause is known').optional(),
  units,
})

/** What a sump may be given by the labels the shop typed, and what one shift leaves to the next. */
export function doseAndHandoverRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof doseQuery> }>(
    '/sumps/:id/dose',
    {
      schema: {
        summary: 'What a sump may be given of an additive by its label, or why nothing',
        tags: ['doses'],
        params: z.object({ id: z.string() }),
        querystring: doseQuery,
      },
    },
    async ({ params: { id: sump }, query: { additive, cause, units }, identity }) => {
      const found = await book.ask((parts, at) =>
        readDoses(parts, {
          ...{ at, sump },
          ...(additive === undefined ? {} : { additive }),
          ...(cause === undefined ? {} : { cause }),
          ...(units === undefined ? {} : { reader: { units } }),
        }),
      )
      const mayGive = (who: 'keeper' | 'owner') => identity.by === 'machine' || reaches(identity.role ?? 'reader', who)
      const doses = found.doses.map((one) => ({ ...one, mayGive: mayGive(one.additive.who) }))
      return withNamesWithin(people, { ...found, doses })
    },
  )
  api.get<{ Querystring: { units?: z.infer<typeof units> } }>(
    '/handover',
    {
      schema: {
        summary: 'The note that this shift might leave to the next, and the last notes',
        tags: ['today'],
        querystring: z.strictObject({ units }),
      },
    },
    async ({ query: { units } }) =>
      withNamesWithin(
        people,
        await book.ask((parts, at) =>
          readHandovers(parts, { at, ...(units === undefined ? {} : { reader: { units } }) }),
        ),
      ),
  )
}
