import { exampleShop } from '@sumpbook/demo'
import { say } from '@sumpbook/fluid'
import { type Command, exits } from '../command.ts'
import { withBook } from '../open.ts'
import { parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Puts the example shop into an empty book. */
export const demo: Command = {
  summary: 'Puts an invented example shop, with a year of entries, into an empty book',
  usage: `sumpbook demo [--data FOLDER] [--json]

  --data   the folder of the book; it must hold nothing yet`,
  run: async (args, world) => {
    const { values } = parse(args, {})
    const report = await withBook(readSettings(values, world), (book) =>
      book.loadExample((until) => JSON.stringify(exampleShop({ until }))),
    )
    const { entries, things } = report.counts
    world.stdout.write(
      values.json
        ? `${JSON.stringify(report)}\n`
        : `${say('The example shop is in the book: {things} things, {entries} entries. Look at it with "sumpbook today" or "sumpbook serve".', { things, entries })}\n`,
    )
    return exits.done
  },
}
