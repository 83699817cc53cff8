import { type Arrival, type Book, entry, journalPage, refusal } from '@sumpbook/book'
import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'
import { problemOf, sendProblem } from '../problems.ts'

const arrival = z.object({
  id: z.string(),
  status: z.enum(['added', 'same', 'conflict', 'refused']),
  quarantine: z.string().nullable(),
  warnings: z.array(z.string()),
  faults: z.array(z.looseObject({ pointer: z.string(), found: z.string(), expected: z.string() })),
  confirmable: z.boolean(),
})

/** The book judges bodies itself, so that a kind from a newer device is kept and not turned away. */
const judgedByBook = () => (body: unknown) => ({ value: body })

/** Entries in, exactly once; the journal out, page by page. */
export function entryRoutes(api: FastifyInstance, book: Book): void {
  api.put<{ Params: { id: string }; Body: unknown }>(
    '/entries/:id',
    {
      schema: {
        summary: 'Write one entry; the same again changes nothing (200), another under its id is refused (409)',
        tags: ['entries'],
        params: z.object({ id: z.string() }),
        body: entry,
      },
      validatorCompiler: judgedByBook,
    },
    async ({ params, body }, reply) => sendArrival(reply, (await book.putMany([withId(body, params.id)]))[0]!),
  )
  api.put<{ Body: unknown }>(
    '/entries',
    {
      schema: {
        summary: 'Write many entries, each judged by itself, all that pass in one durable write',
        tags: ['entries'],
        body: z.union([z.strictObject({ entries: z.array(entry) }), z.array(entry)]),
        response: { 200: z.object({ results: z.array(arrival) }) },
      },
      validatorCompiler: judgedByBook,
    },
    async ({ body }) => ({ results: await book.putMany(entriesOf(body)) }),
  )
  api.get<{ Querystring: { limit: number; cursor?: string } }>(
    '/entries',
    {
      schema: {
        summary: 'The journal, youngest first',
        tags: ['entries'],
        querystring: z.strictObject({
          limit: z.coerce.number().int().min(1).max(500).default(50),
          cursor: z.string().optional(),
        }),
      },
    },
    ({ query }) => journalPage(book.store, query),
  )
}

/** The id in the address counts; a body may leave it out, but not name another. */
function withId(body: unknown, id: string): unknown {
  if (typeof body !== 'object' || body === null || Array.isArray(body)) {
    throw refusal([{ pointer: '', found: JSON.stringify(body) ?? 'nothing', expected: 'an entry' }], 'entry')
  }
  const said = (body as { id?: unknown }).id
  if (said === undefined) return { ...body, id }
  if (typeof said === 'string' && said.toLowerCase() === id.toLowerCase()) return body
  throw refusal([{ pointer: '/id', found: JSON.stringify(said), expected: `"${id}", as in the address` }], 'entry')
}

function entriesOf(body: unknown): unknown[] {
  if (Array.isArray(body)) return body
  const entries = (body as { entries?: unknown } | null)?.entries
  if (Array.isArray(entries)) return entries
  throw refusal(
    [{ pointer: '/entries', found: JSON.stringify(entries) ?? 'nothing', expected: 'a list of entries' }],
    'request',
  )
}

function sendArrival(reply: FastifyReply, arrived: Arrival): FastifyReply {
  const { id, status, quarantine, warnings, faults, confirmable } = arrived
  if (status === 'refused') return sendProblem(reply, { ...problemOf(refusal(faults, 'entry')), confirmable })
  if (status === 'conflict') {
    const detail = `Another entry stands under ${id}; nothing was changed.`
    return sendProblem(reply, {
      type: 'urn:sumpbook:other-entry-under-id',
      title: 'Another entry stands under this id',
      status: 409,
      detail,
    })
  }
  return reply.code(status === 'added' ? 201 : 200).send({ id, status, quarantine, warnings })
}
