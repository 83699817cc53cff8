import { createWriteStream } from 'node:fs'
import { rename } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { type Book, exportCsv, exportWorkbook } from '@sumpbook/book'
import { type Command, exits } from '../command.ts'
import { withBook } from '../open.ts'
import { oneFile, parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Writes the book as a book file, or its log as a table. */
export const exportCommand: Command = {
  summary: 'Writes the whole book to a book file, or its log to a table (.csv, .xlsx)',
  usage: `sumpbook export FILE [--data FOLDER]

  FILE   where to; - writes standard output

A book file is the whole book: importing it gives the same book again. A name that ends in .csv or .xlsx gives the log as a
table in canonical units: one entry a row, without what was withdrawn.`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, {})
    const file = oneFile(positionals)
    await withBook(readSettings(values, world), async (book) => {
      const pieces = await piecesOf(book, file)
      if (file === '-') return pipeline(pieces, world.stdout, { end: false })
      // Beside its place first: a half-written export never stands where a whole one stood.
      await pipeline(pieces, createWriteStream(`${file}.part`))
      await rename(`${file}.part`, file)
    })
    return exits.done
  },
}

async function piecesOf(book: Book, file: string): Promise<Readable> {
  if (/\.csv$/i.test(file)) return Readable.from(exportCsv(book.store))
  if (/\.xlsx$/i.test(file)) return Readable.from([await exportWorkbook(book.store)])
  return Readable.from(book.export())
}
