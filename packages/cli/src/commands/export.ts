import { createWriteStream } from 'node:fs'
import { rename } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { type Command, exits } from '../command.ts'
import { withBook } from '../open.ts'
import { oneFile, parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Writes the book as a book file. */
export const exportCommand: Command = {
  summary: 'Writes the whole book to a book file; importing it gives the same book again',
  usage: `sumpbook export FILE [--data FOLDER]

  FILE   where to; - writes standard output`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, {})
    const file = oneFile(positionals)
    await withBook(readSettings(values, world), async (book) => {
      const pieces = Readable.from(book.export())
      if (file === '-') return pipeline(pieces, world.stdout, { end: false })
      // Beside its place first: a half-written export never stands where a whole one stood.
      await pipeline(pieces, createWriteStream(`${file}.part`))
      await rename(`${file}.part`, file)
    })
    return exits.done
  },
}
