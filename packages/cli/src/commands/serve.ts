import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { openBook, openStore, sayPlace } from '@sumpbook/book'
import { buildApp, listen } from '@sumpbook/server'
import { type Command, exits } from '../command.ts'
import { parse } from '../options.ts'
import { readSettings } from '../settings.ts'
import { version } from '../version.ts'

const webRoot = fileURLToPath(new URL('../../../web/dist', import.meta.url))

/** What was written is settled this much later, all of that time at once. */
const settleAfterMs = 30_000

/** Serves the book until a signal ends it. */
export const serve: Command = {
  summary: 'Serves the book to phones and desks',
  usage: `sumpbook serve [--port 7340] [--host 127.0.0.1] [--data FOLDER]

  --port   where to listen; 0 takes a free one
  --host   loopback unless told otherwise; another address opens the book to everybody who reaches it
  --data   the folder of the book; made where there is none
  --database-url, --schema   a book on a PostgreSQL server instead; several servers may serve one book`,
  run: async (args, world) => {
    const { values } = parse(args, { port: { type: 'string' }, host: { type: 'string' } })
    const settings = readSettings(values, world)
    const book = openBook(await openStore(settings.place, { copies: settings.folder }), () => new Date())
    const app = await buildApp({
      book,
      version,
      settleAfterMs,
      folder: settings.folder,
      logger: { level: 'warn' },
      ...(existsSync(webRoot) ? { webRoot } : {}),
    })
    const address = await listen(app, settings, () => book.close())
    if (!isLoopback(settings.host)) {
      world.stderr.write('Everybody who reaches this address can read and write the book: there are no accounts yet.\n')
    }
    world.stdout.write(
      `Sumpbook is open at ${address.replace('127.0.0.1', 'localhost')} (book: ${sayPlace(settings.place)})\n`,
    )
    return exits.done
  },
}

const isLoopback = (host: string) => host === 'localhost' || host === '::1' || host.startsWith('127.')
