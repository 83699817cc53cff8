import { Readable } from 'node:stream'
import {
  type Arrival,
  type ArrivalNote,
  type Book,
  BookError,
  entry,
  entryPage,
  exportCsv,
  exportWorkbook,
  type JournalFilter,
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

/** What of the journal is asked for; the same for its pages and its table. */
const filterQuery = {
  sump: z.string().max(200).describe('one sump, by its id').optional(),
  kind: z
    .string()
    .max(1000)
    .regex(/^[a-z]+(,[a-z]+)*$/, { error: 'kinds of entries with commas between, such as addition,charge' })
    .describe('kinds of entries, with commas between')
    .optional(),
  by: z.string().min(1).max(200).describe('who wrote: a name, an id, or what the entry says').optional(),
  from: z.iso.date().describe('first day, in the shop’s zone').optional(),
  to: z.iso.date().describe('last day, included').optional(),
  words: z.string().max(200).describe('words that all stand in the line, notes included').optional(),
}
/** A table is sent as it is made: what is wrong with the question has to be found before. */
const isSpan = ({ from, to }: { from?: string | undefined; to?: string | undefined }) =>
  from === undefined || to === undefined || from <= to
const noSpan = { error: 'a day from the first on', path: ['to'] }
const pageQuery = z
  .strictObject({
    limit: z.coerce.number().int().min(1).max(500).default(50),
    cursor: z.string().optional(),
    ...filterQuery,
  })
  .refine(isSpan, noSpan)
const tableQuery = z
  .strictObject({ format: z.enum(['csv', 'xlsx']).default('csv'), ...filterQuery })
  .refine(isSpan, noSpan)
const tableTypes = {
  csv: 'text/csv; charset=utf-8',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const

/** A name stands for everybody of that name: entries hold ids. */
function filterOf(
  { kind, by, ...rest }: Omit<z.infer<typeof tableQuery>, 'format'>,
  names: ReadonlyMap<string, string>,
): JournalFilter {
  const ids = [...names].filter(([, name]) => name.toLowerCase() === by?.trim().toLowerCase()).map(([id]) => id)
  return { ...rest, kinds: kind?.split(','), by: by === undefined ? undefined : [by, ...ids] }
}

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
  api.get<{ Querystring: z.infer<typeof pageQuery> }>(
    '/entries',
    {
      schema: {
        summary:
          'The journal, youngest first: all of it, or one sump, some kinds, one person, a span of days, some words',
        tags: ['entries'],
        querystring: pageQuery,
      },
    },
    async ({ query: { limit, cursor, ...asked } }) => {
      const filter = filterOf(asked, await people.names())
      const { entries, ...page } = await journalPage(book.store, { limit, cursor, filter })
      return { entries: await withNames(people, entries), ...page }
    },
  )
  api.get<{ Querystring: z.infer<typeof tableQuery> }>(
    '/entries/table',
    {
      schema: {
        summary: 'What of the journal stands and is asked for, oldest first, as a table (csv, xlsx)',
        tags: ['entries'],
        querystring: tableQuery,
      },
    },
    async ({ query: { format, ...query } }, reply) => {
      const names = await people.names()
      const asked = { filter: filterOf(query, names), names }
      reply.type(tableTypes[format]).header('content-disposition', `attachment; filename="sumpbook-journal.${format}"`)
      return format === 'csv'
        ? reply.send(Readable.from(exportCsv(book.store, asked)))
        : reply.send(await exportWorkbook(book.store, asked))
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
