import {
  type Arrival,
  type ArrivalNote,
  type Book,
  BookError,
  entry,
  entryPage,
  journalPage,
  quarantine,
  refusal,
} from '@sumpbook/book'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { entryRights } from '../people/entry-rights.ts'
import type { People } from '../people/people.ts'
import { withNames } from '../people/with-names.ts'
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
export function entryRoutes(api: FastifyInstance, { book, people }: { book: Book; people: People }): void {
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
    async (request, reply) => {
      const [arrived] = await take({ book, people }, request, [withId(request.body, request.params.id)])
      return sendArrival(reply, arrived!)
    },
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
    async (request) => ({ results: await take({ book, people }, request, entriesOf(request.body)) }),
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
    async ({ query }) => {
      const { entries, next } = await journalPage(book.store, query)
      return { entries: await withNames(people, entries), next }
    },
  )
  api.get<{ Params: { id: string } }>(
    '/entries/:id',
    {
      schema: {
        summary: 'One entry: what was sent, who sent it when and from which device, what withdrew it',
        tags: ['entries'],
        params: z.object({ id: z.string().max(100) }),
      },
    },
    async ({ params }) => {
      const page = await entryPage(book.store, params.id)
      const [[line], voids] = await Promise.all([withNames(people, [page]), withNames(people, page.voids)])
      const device = page.envelope?.device ?? null
      return { ...line!, voids, deviceName: device === null ? null : await people.deviceName(device) }
    },
  )
  api.get(
    '/quarantine',
    { schema: { summary: 'Entries that count nowhere for now, and what they wait for', tags: ['entries'] } },
    async () => ({ entries: await withNames(people, await quarantine(book.store)) }),
  )
}

/** A device that says what time it has when it sends lets its clock be corrected. */
const sentAtHeader = 'sumpbook-sent-at'
/** What the network takes is no fault of a clock. */
const clockNoiseMs = 60_000
/** Beyond this no clock was set: nothing can be corrected by it. */
const clockLostMs = 366 * 24 * 60 * 60_000

function clockAhead({ headers }: FastifyRequest, now: Date): number | null {
  const said = headers[sentAtHeader]
  const ahead = typeof said === 'string' ? Date.parse(said) - now.getTime() : Number.NaN
  return Math.abs(ahead) < clockLostMs ? Math.round(ahead) : null
}

/** Takes what the person may write; the rest is refused one by one, or held for a keeper. */
async function take(
  { book, people }: { book: Book; people: People },
  request: FastifyRequest,
  bodies: readonly unknown[],
): Promise<(Arrival & { isForbidden?: boolean })[]> {
  const { identity } = request
  const now = people.now()
  const rights = await entryRights({ book, people, now }, identity, bodies)
  const clockAheadMs = clockAhead(request, now)
  const isNamed = identity.by !== 'machine'
  const isOff = clockAheadMs !== null && Math.abs(clockAheadMs) > clockNoiseMs
  const notes = rights.map(
    ({ author, hold }): ArrivalNote => ({
      envelope: isNamed || isOff ? { person: author, device: identity.token?.id ?? null, clockAheadMs } : null,
      hold,
    }),
  )
  const allowed = bodies.flatMap((body, n) => (rights[n]!.fault === null ? [{ body, note: notes[n]! }] : []))
  const arrivals = await book.putMany(
    allowed.map(({ body }) => body),
    allowed.map(({ note }) => note),
  )
  let next = 0
  return bodies.map((body, n) => {
    const { fault } = rights[n]!
    if (fault === null) return arrivals[next++]!
    const { id } = body as { id?: unknown }
    return {
      id: typeof id === 'string' ? id.toLowerCase() : '',
      status: 'refused',
      quarantine: null,
      warnings: [],
      faults: [fault],
      confirmable: false,
      isForbidden: true,
    }
  })
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

function sendArrival(reply: FastifyReply, arrived: Arrival & { isForbidden?: boolean }): FastifyReply {
  const { id, status, quarantine, warnings, faults, confirmable, isForbidden = false } = arrived
  if (isForbidden) {
    const { found, expected } = faults[0]!
    return sendProblem(reply, {
      ...problemOf(new BookError('not-allowed', `Found ${found}; expected ${expected}.`, faults)),
      confirmable: false,
    })
  }
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
