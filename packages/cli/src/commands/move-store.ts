import { resolve } from 'node:path'
import { moveStore, openStore, type StorePlace, sayPlace } from '@sumpbook/book'
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
stays as it is.`,
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
        const { entries, things, head } = report
        world.stdout.write(
          values.json
            ? `${JSON.stringify({ from: sayPlace(here), to: sayPlace(there), ...report }, null, 2)}\n`
            : `${entries} entries and ${things} things are now in ${sayPlace(there)}, chain and export as before (${head.seq}:${head.hash}). The book in ${sayPlace(here)} stays as it was: take care that nobody writes to it any more.\n`,
        )
      } finally {
        await to.close()
      }
    } finally {
      await from.close()
    }
    return exits.done
  },
}

function placeAt(to: string, schema: string | undefined, { cwd }: World): StorePlace {
  if (isDatabaseUrl(to)) return databasePlace(to, schema)
  if (schema !== undefined) throw new UsageError('--to-schema belongs to a database, and --to names a folder')
  return filePlace(resolve(cwd(), to))
}
