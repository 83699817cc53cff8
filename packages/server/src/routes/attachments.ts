import { createReadStream } from 'node:fs'
import { BookError, keepAttachment, keptAttachment, largestAttachment } from '@sumpbook/book'
import type { FastifyInstance, FastifyReply } from 'fastify'
import { z } from 'zod'

const params = z.object({ sha256: z.string() })
/** A picture that somebody opens in a tab of its own runs nothing and asks for nothing. */
const alone = "default-src 'none'; style-src 'unsafe-inline'; sandbox"

/**
 * Pictures and papers, each under the SHA-256 of its content: what is there under a name never changes.
 *
 * @param folder where they lie; null keeps none
 */
export async function attachmentRoutes(api: FastifyInstance, folder: string | null): Promise<void> {
  await api.register(async (scope) => {
    // The bytes are what they are: what the sender calls them does not count.
    scope.removeAllContentTypeParsers()
    scope.addContentTypeParser('*', { parseAs: 'buffer', bodyLimit: largestAttachment }, (_, body, done) =>
      done(null, body),
    )
    scope.put<{ Params: { sha256: string }; Body: Buffer | undefined }>(
      '/attachments/:sha256',
      {
        bodyLimit: largestAttachment,
        schema: {
          summary:
            'Keep a picture or a PDF under the SHA-256 of its content (201); the same again changes nothing (200)',
          tags: ['attachments'],
          consumes: ['application/octet-stream'],
          params,
        },
      },
      async ({ params: { sha256 }, body }, reply) => {
        const status = await keepAttachment(folderOr(folder), sha256, body ?? new Uint8Array())
        return reply.code(status === 'added' ? 201 : 200).send({ sha256, status })
      },
    )
    scope.get<{ Params: { sha256: string } }>(
      '/attachments/:sha256',
      { schema: { summary: 'A picture or a PDF', tags: ['attachments'], params } },
      ({ params: { sha256 } }, reply) => sendAttachment(reply, folderOr(folder), sha256),
    )
  })
}

async function sendAttachment(reply: FastifyReply, folder: string, sha256: string): Promise<FastifyReply> {
  const { path, bytes, type } = await keptAttachment(folder, sha256)
  reply
    .type(type)
    .header('content-length', bytes)
    .header('etag', `"${sha256}"`)
    .header('cache-control', 'private, max-age=31536000, immutable')
    .header('content-security-policy', alone)
    .header(
      'content-disposition',
      type === 'application/pdf' ? `attachment; filename="${sha256.slice(0, 12)}.pdf"` : 'inline',
    )
  return reply.send(createReadStream(path))
}

function folderOr(folder: string | null): string {
  if (folder === null) throw new BookError('not-found', 'This book keeps no attachments: it has no folder.')
  return folder
}
