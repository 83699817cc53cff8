import { Readable } from 'node:stream'
import type { MultipartFile } from '@fastify/multipart'
import { type Book, exportCsv, exportWorkbook, refusal, type SheetMap, sourceOf } from '@sumpbook/book'
import { exampleShop } from '@sumpbook/demo'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { z } from 'zod'

/** A file of any kind into the book, and the book out as a file. */
export function importRoutes(api: FastifyInstance, book: Book): void {
  api.post<{ Querystring: { preview: boolean } }>(
    '/import',
    {
      schema: {
        summary: 'A book file, CSV or workbook (multipart: `map` as JSON text, then `file`)',
        tags: ['import and export'],
        consumes: ['multipart/form-data'],
        querystring: z.strictObject({ preview: z.stringbool().default(false) }),
      },
    },
    async (request) => {
      const { file, bytes } = await fileOf(request)
      const source = sourceOf(file.filename, bytes)
      return book.importFile(source, { map: mapOf(file), preview: request.query.preview })
    },
  )
  api.get<{ Querystring: { format: keyof typeof formats } }>(
    '/export',
    {
      schema: {
        summary: 'The whole book as a book file (json), or its log as a table (csv, xlsx)',
        tags: ['import and export'],
        querystring: z.strictObject({ format: z.enum(['json', 'csv', 'xlsx']).default('json') }),
      },
    },
    async ({ query: { format } }, reply) => {
      const { type, made } = formats[format]
      return reply
        .type(type)
        .header('content-disposition', `attachment; filename="sumpbook.${format}"`)
        .send(await made(book))
    },
  )
  api.post(
    '/demo',
    { schema: { summary: 'The example shop into an empty book', tags: ['import and export'] } },
    async (_, reply) => {
      const report = await book.loadExample((until) => JSON.stringify(exampleShop({ until })))
      return reply.code(201).send(report)
    },
  )
}

/** The file of a form, whole. @throws {BookError} `refused-input` where the form is cut, as by a phone that lost its network, or is none */
async function fileOf(request: FastifyRequest): Promise<{ file: MultipartFile; bytes: Buffer }> {
  try {
    const file = await request.file()
    if (file === undefined) throw refusal([{ pointer: '/file', found: 'nothing', expected: 'a file' }], 'request')
    return { file, bytes: await file.toBuffer() }
  } catch (error) {
    if (!(error instanceof Error) || !isBrokenForm(error)) throw error
    throw refusal(
      [{ pointer: '', found: `a form that cannot be read (${error.message})`, expected: 'a whole one' }],
      'request',
    )
  }
}

/** The form's reader throws plain errors that are known by their words alone. */
const isBrokenForm = ({ message }: Error) =>
  /^(multipart:|unexpected end of (multipart|form)|malformed (part|content)|part terminated early|missing content-type)/i.test(
    message,
  )

const formats = {
  json: { type: 'application/json; charset=utf-8', made: async (book: Book) => Readable.from(book.export()) },
  csv: { type: 'text/csv; charset=utf-8', made: async (book: Book) => Readable.from(exportCsv(book.store)) },
  xlsx: {
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    made: (book: Book) => exportWorkbook(book.store),
  },
} as const

/** The answers to the sheet's questions; without them none. */
function mapOf({ fields }: MultipartFile): SheetMap {
  const field = fields.map
  const given = field !== undefined && !Array.isArray(field) && field.type === 'field' ? String(field.value) : '{}'
  try {
    return JSON.parse(given) as SheetMap
  } catch {
    throw refusal([{ pointer: '/map', found: 'text that is not JSON', expected: 'the map as JSON' }], 'request')
  }
}
