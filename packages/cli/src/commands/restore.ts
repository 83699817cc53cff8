import { join, resolve } from 'node:path'
import {
  BookError,
  type DrillReport,
  openStore,
  type RestoreReport,
  restore,
  restoreDrill,
  type Store,
  type StorePlace,
  sayPlace,
} from '@sumpbook/book'
import { say, sayNumber } from '@sumpbook/fluid'
import { type Command, exits } from '../command.ts'
import { oneFile, parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Brings a backup back. */
export const restoreCommand: Command = {
  summary: 'Brings a backup back, into an empty place or in place of the book there',
  usage: `sumpbook restore FILE [--replace | --drill] [--data FOLDER | --database-url URL] [--json]

  --replace   where there is a book already: it is moved aside, whole, when the backup was found whole
  --drill     restores into a temporary folder, compares, takes that away again, and changes nothing

Stop whatever serves the book first. A backup of a book in a folder may be restored into a database, and the other way
round. A damaged backup is refused, and nothing is touched.`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, {
      replace: { type: 'boolean', default: false },
      drill: { type: 'boolean', default: false },
    })
    const file = resolve(world.cwd(), oneFile(positionals))
    const { place, folder } = readSettings(values, world)
    const attachments = join(folder, 'attachments')
    if (values.drill) {
      const report = await withLive(place, (live) => restoreDrill(file, live))
      world.stdout.write(values.json ? `${JSON.stringify(report, null, 2)}\n` : drillText(report))
      return exits.done
    }
    const report = await restore(file, place, { attachments, replace: values.replace })
    world.stdout.write(values.json ? `${JSON.stringify(report, null, 2)}\n` : reportText(report, place))
    return exits.done
  },
}

/** The book in use, where there is one that can be read: a drill needs none. */
async function withLive<T>(place: StorePlace, work: (live: Store | null) => Promise<T>): Promise<T> {
  let live: Store | null = null
  try {
    live = await openStore(place, { mustExist: true })
  } catch (error) {
    if (!(error instanceof BookError)) throw error
  }
  try {
    return await work(live)
  } finally {
    await live?.close()
  }
}

function reportText({ entries, things, attachments, head, aside }: RestoreReport, place: StorePlace): string {
  const counts = { place: sayPlace(place), entries, things, attachments }
  const lines = [
    say('Restored into {place}: {entries} entries, {things} things, {attachments} attachments.', counts),
    say('Its chain ends at {head}', { head: `${head.seq}:${head.hash}` }),
    ...(aside === null ? [] : [say('The book that was there lies in {place}', { place: aside })]),
  ]
  return `${lines.join('\n')}\n`
}

/** What a drill showed, in sentences. */
export function drillText({ entries, things, attachments, seconds, live }: DrillReport): string {
  const sentences = [
    say(
      'The drill went well: restored in {seconds} s, walked and compared, {entries} entries, {things} things, {attachments} attachments.',
      { seconds: sayNumber(seconds, 1), entries, things, attachments },
    ),
  ]
  if (live !== null) {
    sentences.push(
      live.sameBook
        ? say('{count} entries have arrived in the book since.', { count: live.arrivedSince })
        : say('It is not a backup of the book in use.'),
    )
  }
  return `${sentences.join(' ')}\n`
}
