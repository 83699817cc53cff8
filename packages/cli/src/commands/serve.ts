import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { openBook, openStore, sayPlace } from '@sumpbook/book'
import { say, speech } from '@sumpbook/fluid'
import { buildApp, listen, openPeople, type People } from '@sumpbook/server'
import { type Command, exits, type World } from '../command.ts'
import { parse } from '../options.ts'
import { needsAccounts, readSettings } from '../settings.ts'
import { version } from '../version.ts'

const webRoot = fileURLToPath(new URL('../../../web/dist', import.meta.url))

/** What was written is settled this much later, all of that time at once. */
const settleAfterMs = 30_000

/** Serves the book until a signal ends it. */
export const serve: Command = {
  summary: 'Serves the book to phones and desks',
  usage: `sumpbook serve [--port 7340] [--host 127.0.0.1] [--accounts] [--public-url URL] [--certificate FILE --certificate-key FILE]
      [--data FOLDER]

  --port   where to listen; 0 takes a free one
  --host   loopback unless told otherwise; at another address everybody needs an account
  --accounts     everybody needs an account on loopback as well, as behind a proxy on this machine
  --public-url   where people reach the book through a proxy, such as https://book.example; includes --accounts
  --certificate, --certificate-key   PEM files to speak https with by itself; then --public-url is what people type, and no proxy is
           needed. scripts/shop-certificate.mjs makes them for the shop's network
  --log    info: a line of JSON a request on stderr; warn: only what nobody foresaw (so on a terminal); silent
  --language, --numbers   for who names none of en, de and es, as with figures as in de-CH; every phone and browser names its own
  --data   the folder of the book; made where there is none
  --database-url, --schema   a book on a PostgreSQL server instead; several servers may serve one book

Without an owner a code is printed that makes the first one, good once and for an hour.
SUMPBOOK_SECRET_FILE names a file with what signs cookies (else the book keeps one of its own); SUMPBOOK_OIDC_ISSUER,
SUMPBOOK_OIDC_CLIENT_ID, SUMPBOOK_OIDC_CLIENT_SECRET_FILE and SUMPBOOK_OIDC_NAME set up sign-in by OpenID Connect.`,
  run: async (args, world) => {
    const { values } = parse(args, {
      port: { type: 'string' },
      host: { type: 'string' },
      accounts: { type: 'boolean' },
      'public-url': { type: 'string' },
      certificate: { type: 'string' },
      'certificate-key': { type: 'string' },
      log: { type: 'string' },
    })
    const settings = readSettings(values, world)
    const { publicUrl, secret, provider, tls } = settings
    const accounts = needsAccounts(settings)
    const book = openBook(await openStore(settings.place, { copies: settings.folder }), () => new Date())
    const people = await openPeople(book.store, { publicUrl, secret, provider })
    const app = await buildApp({
      book,
      people,
      accounts,
      behindProxy: publicUrl !== null && tls === null,
      https: publicUrl?.startsWith('https:') ?? false,
      ...(tls === null ? {} : { tls }),
      version,
      settleAfterMs,
      folder: settings.folder,
      speech: speech(),
      logger: { level: settings.log ?? (world.stderr.isTTY ? 'warn' : 'info'), stream: world.stderr },
      ...(existsSync(webRoot) ? { webRoot } : {}),
    })
    const address = await listen(app, settings, () => book.close())
    world.stdout.write(
      `${say('Sumpbook is open at {address} (book: {place})', {
        address: (publicUrl ?? address).replace('127.0.0.1', 'localhost'),
        place: sayPlace(settings.place),
      })}\n`,
    )
    if (accounts) await sayFirstRun(people, world)
    return exits.done
  },
}

/** A book that nobody owns yet opens to whoever reads this. */
async function sayFirstRun(people: People, { stdout }: World): Promise<void> {
  const made = await people.firstRunCode()
  if (made === null) return
  const until = new Date(made.expires).toTimeString().slice(0, 5)
  const words = say('Nobody owns this book yet. Open it and type this code, good once, until {until}: {code}', {
    until,
    code: made.code,
  })
  stdout.write(`${words}\n`)
}
