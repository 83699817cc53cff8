import { type Book, readDiagnosis } from '@sumpbook/book'
import { needsFollowUp, type Sign, say, signFamilies, signs } from '@sumpbook/fluid'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const atQuery = z.strictObject({ at: z.iso.datetime({ offset: true }).optional() })

/** What may be wrong with a sump, and the signs that observations can have. */
export function diagnosisRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof atQuery> }>(
    '/sumps/:id/diagnosis',
    {
      schema: {
        summary: 'What may be wrong with a sump, why, which test would tell most, and what must stop at once',
        tags: ['diagnosis'],
        params: z.object({ id: z.string() }),
        querystring: atQuery,
      },
    },
    ({ params: { id: sump }, query: { at } }) =>
      book.ask((parts, now) => readDiagnosis(parts, { sump, at: at === undefined ? now : new Date(at) })),
  )
  api.get(
    '/signs',
    { schema: { summary: 'The published list of signs for observations, by family', tags: ['diagnosis'] } },
    () => ({
      families: Object.entries(signFamilies).map(([id, name]) => ({ id, name: say(name) })),
      signs: signs.map((sign: Sign) => ({
        id: sign.id,
        family: sign.family,
        question: say(sign.question),
        also: sign.also ?? [],
        stop: needsFollowUp(sign.id),
      })),
    }),
  )
}
