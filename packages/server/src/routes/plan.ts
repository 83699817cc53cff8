import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const sumpId = z.object({ id: z.string() })

const planQuery = z.strictObject({
  at: z.iso.datetime({ offset: true }).optional(),
  water: z.string().describe('id of a water of the shop; the first without it').optional(),
  strength: z.coerce.number().min(0).max(100).describe('percent poured; what holds the target without it').optional(),
  every: z.coerce.number().min(1).max(365).describe('days between fills; 7 without it').optional(),
  days: z
    .string()
    .regex(/^\d{1,4}(,\d{1,4}){0,19}$/, { error: 'days apart by commas, such as 28,91,182' })
    .optional(),
})

const otherWaterQuery = z.strictObject({
  at: z.iso.datetime({ offset: true }).optional(),
  water: z.string().describe('id of the water that might have been poured'),
  since: z.iso.date().describe('the first day on which it might have been'),
})

/** What would be: other ways to keep a sump from now on, and another water in its past. */
export function planRoutes(api: FastifyInstance, book: Book): void {
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof planQuery> }>(
    '/sumps/:id/plan',
    {
      schema: {
        summary: 'Where a sump goes if it is topped up with one water and one strength',
        tags: ['estimate'],
        params: sumpId,
        querystring: planQuery,
      },
    },
    ({ params: { id }, query: { at, water, strength, every, days } }) =>
      book.plan(id, {
        ...(at === undefined ? {} : { at: new Date(at) }),
        ...(water === undefined ? {} : { water }),
        ...(strength === undefined ? {} : { strength }),
        ...(every === undefined ? {} : { every }),
        ...(days === undefined ? {} : { days: days.split(',').map(Number) }),
      }),
  )
  api.get<{ Params: { id: string }; Querystring: z.infer<typeof otherWaterQuery> }>(
    '/sumps/:id/other-water',
    {
      schema: {
        summary: 'What another water would have made of a sump’s minerals by now',
        tags: ['estimate'],
        params: sumpId,
        querystring: otherWaterQuery,
      },
    },
    ({ params: { id }, query: { at, water, since } }) =>
      book.otherWater(id, { water, since, ...(at === undefined ? {} : { at: new Date(at) }) }),
  )
}
