import { dirname, join, resolve } from 'node:path'
import {
  type AttachmentsCopied,
  copyAttachments,
  moveStore,
  openStore,
  type StorePlace,
  type StoreReport,
  sayPlace,
} from '@sumpbook/book'
import { say } from '@sumpbook/fluid'
import { type Command, exits, UsageError, type World } from '../command.ts'
import { parse } from '../options.ts'
import { databasePlace, filePlace, isDatabaseUrl, readSettings } from '../settings.ts'

/** Copies the book to another place. */
export const moveStoreCommand: Command = {
  summary: 'Copies the book into a database or back into a folder, the same to the last byte',
  usage: `sumpbook move-store --to URL|FOLDER [--to-schema NAME] [--data FOLDER | --database-url URL] [--json]

  --to          postgresql://… or a folder; it must hold no book yet
  --to-schema   the schema in the database; public without it

Stop whatever serves the book first: what is written to the old place afterwards is not in the new one. The old place
stays as it is. Attachments are files beside a book in a folder and are copied with it; beside a book in a database they lie in
the data folder (SUMPBOOK_DATA), which stays as it is.`,
  run: async (args, world) => {
    const { values } = parse(args, { to: { type: 'string' }, 'to-schema': { type: 'string' } })
    if (values.to === undefined) throw new UsageError('expected --to with a database’s address or a folder')
    const { place: here, folder } = readSettings(values, world)
    const there = placeAt(values.to, values['to-schema'], world)
    const from = await openStore(here, { copies: folder, mustExist: true })
    try {
      const to = await openStore(there)
      try {
        const report = await moveStore(from, to)
        const beside = there.kind === 'file' ? dirname(there.file) : folder
        const attachments = await copyAttachments(join(folder, 'attachments'), join(beside, 'attachments'))
        const moved = { from: sayPlace(here), to: sayPlace(there), folder: beside, ...report, attachments }
        world.stdout.write(values.json ? `${JSON.stringify(moved, null, 2)}\n` : reportText(moved))
        for (const name of attachments.damaged)
          world.stderr.write(`${say('Left behind, since it is damaged: attachment {name}', { name })}\n`)
        if (attachments.damaged.length > 0) return exits.failed
      } finally {
        await to.close()
      }
    } finally {
      await from.close()
    }
    return exits.done
  },
}

interface Moved extends StoreReport {
  from: string
  to: string
  folder: string
  attachments: AttachmentsCopied
}

function reportText({ from, to, folder, entries, things, head, attachments }: Moved): string {
  const moved = say(
    '{entries} entries and {things} things are now in {to}, chain and export as before ({head}). The book in {from} stays as it was: take care that nobody writes to it any more.',
    { entries, things, to, head: `${head.seq}:${head.hash}`, from },
  )
  const beside = [
    ...(attachments.copied === 0 ? [] : [say('{count} attachments were copied.', { count: attachments.copied })]),
    say('Attachments lie in {folder}.', { folder: join(folder, 'attachments') }),
  ]
  return `${moved}\n${beside.join(' ')}\n`
}

function placeAt(to: string, schema: string | undefined, { cwd }: World): StorePlace {
  if (isDatabaseUrl(to)) return databasePlace(to, schema)
  if (schema !== undefined) throw new UsageError('--to-schema belongs to a database, and --to names a folder')
  return filePlace(resolve(cwd(), to))
}
