import { Readable } from 'node:stream'
import { say } from '@sumpbook/fluid'
import { CsvError, parse } from 'csv-parse'
import { refusal } from '../../errors.ts'
import { unguarded } from '../../export/table/formula-guard.ts'
import { delimiterOf } from './delimiter.ts'
import { type Encoding, encodingOf, textOfSource } from './encoding.ts'
import type { SheetRow, SheetRows } from './sheet-rows.ts'
import { firstBytesOf, type SheetSource } from './sheet-source.ts'

/** A row longer than this is an unclosed quote or no table at all. */
const longestRow = 1_000_000
/** The delimiter is judged by this many bytes. */
const headLength = 65_536

/** A CSV as rows, never held in memory as a whole. */
export async function readCsv(source: SheetSource): Promise<SheetRows> {
  const encoding = await encodingOf(source)
  const head = new TextDecoder(encoding).decode(await firstBytesOf(source, headLength))
  const delimiter = delimiterOf(head)
  const warnings =
    encoding === 'windows-1252' ? [say('The file is not UTF-8; its letters were read as Windows-1252.')] : []
  return { title: null, delimiter, warnings, rows: () => rowsOf(source, encoding, delimiter) }
}

async function* rowsOf(source: SheetSource, encoding: Encoding, delimiter: string): AsyncIterable<SheetRow> {
  const parser = parse({
    delimiter,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    record_delimiter: ['\r\n', '\n', '\r'],
    max_record_size: longestRow,
  })
  const text = Readable.from(textOfSource(source, encoding))
  text.on('error', (error) => parser.destroy(error))
  text.pipe(parser)
  let row = 0
  try {
    for await (const record of parser as AsyncIterable<string[]>) {
      row += 1
      // What our own export guards against being run as a formula is taken as it was.
      yield { row, cells: record.map(unguarded) }
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    throw refusal([faultOf(error)], 'sheet')
  } finally {
    text.destroy()
  }
}

/** Rows read before are still on their way when the parser stops, so the place is the parser's own. */
function faultOf({ code, records }: CsvError) {
  const row = Number(records ?? 0) + 1
  const place = { pointer: `/rows/${row}`, row }
  if (code === 'CSV_QUOTE_NOT_CLOSED') {
    return {
      ...place,
      found: say('the end of the file inside quotation marks'),
      expected: say('a whole file: every opening quotation mark closed'),
    }
  }
  if (code === 'CSV_MAX_RECORD_SIZE') {
    return {
      ...place,
      found: say('a row of more than {characters} characters', { characters: String(longestRow) }),
      expected: say('rows of a table: is a quotation mark not closed?'),
    }
  }
  return {
    ...place,
    found: say('a row that cannot be read ({why})', { why: code }),
    expected: say('cells separated by commas, semicolons or tabs'),
  }
}
