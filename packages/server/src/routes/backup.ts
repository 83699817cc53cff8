import { createReadStream } from 'node:fs'
import { join } from 'node:path'
import { type Book, backupDrill, freshBackup, lastBackup } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'

const made = z.looseObject({
  at: z.string(),
  seq: z.number().describe('place of the last entry in it'),
  entries: z.number(),
  attachments: z.number(),
  damagedAttachments: z.number().describe('left out, since they are no longer what their name says'),
  bytes: z.number(),
})
const tried = z.looseObject({
  at: z.string(),
  good: z.boolean(),
  seconds: z.number().nullable(),
  error: z.string().nullable(),
})
const drill = z.looseObject({
  entries: z.number(),
  things: z.number(),
  attachments: z.number(),
  sameBytes: z.boolean(),
  seconds: z.number(),
  live: z.object({ sameBook: z.boolean(), arrivedSince: z.number() }).nullable(),
})

/**
 * A fresh backup to take away, and a drill. Both are made in a thread of their own, one at a time: the server answers meanwhile.
 *
 * @param folder of what lies beside the book; null where it has none
 */
export function backupRoutes(api: FastifyInstance, book: Book, folder: string | null): void {
  const attachments = folder === null ? undefined : join(folder, 'attachments')
  const now = () => new Date()
  const inTurn = oneAtATime()
  api.get(
    '/backup',
    {
      schema: {
        summary: 'When the book was last backed up by this program, and how the last drill went',
        tags: ['backup'],
        response: { 200: z.object({ made: made.nullable(), tried: tried.nullable(), running: z.boolean() }) },
      },
    },
    async () => ({ ...(await lastBackup(book.store)), running: inTurn.isRunning() }),
  )
  api.get(
    '/backup/archive',
    {
      exposeHeadRoute: false,
      schema: { summary: 'A fresh backup of the whole book, people included', tags: ['backup'] },
    },
    async (_, reply) => {
      const { file, bytes, report, clear } = await inTurn.run(() => freshBackup(book.store, attachments, now))
      const archive = createReadStream(file)
      archive.once('close', () => void clear())
      return reply
        .type('application/x-tar')
        .header('content-length', bytes)
        .header('cache-control', 'no-store')
        .header('content-disposition', `attachment; filename="sumpbook-backup-${report.head.seq}.tar"`)
        .send(archive)
    },
  )
  api.post(
    '/backup/drill',
    {
      schema: {
        summary: 'Backs the book up, restores that into a temporary place, walks and compares it, and takes it away',
        tags: ['backup'],
        response: { 200: drill },
      },
    },
    () => inTurn.run(() => backupDrill(book.store, attachments, now)),
  )
}

/** Jobs that are heavy on the disk wait for each other. */
function oneAtATime() {
  let last: Promise<unknown> = Promise.resolve()
  let waiting = 0
  return {
    isRunning: () => waiting > 0,
    run<T>(job: () => Promise<T>): Promise<T> {
      waiting += 1
      const mine = last.then(job).finally(() => {
        waiting -= 1
      })
      // Who comes next does not mind how this one went.
      last = mine.catch(() => undefined)
      return mine
    },
  }
}
