import type { SheetSource } from './sheet-source.ts'

/** How the text of a CSV is written in bytes. */
export type Encoding = 'utf-8' | 'windows-1252' | 'utf-16le' | 'utf-16be'

/**
 * Reads all bytes once: UTF-16 where it says so by its byte order mark, UTF-8 where every byte fits it, else
 * Windows-1252, which spreadsheet programs still write on many machines.
 */
export async function encodingOf(source: SheetSource): Promise<Encoding> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let first = true
  try {
    for await (const chunk of source.open()) {
      if (first && chunk.length >= 2) {
        if (chunk[0] === 0xff && chunk[1] === 0xfe) return 'utf-16le'
        if (chunk[0] === 0xfe && chunk[1] === 0xff) return 'utf-16be'
      }
      first = first && chunk.length === 0
      decoder.decode(chunk, { stream: true })
    }
    decoder.decode()
    return 'utf-8'
  } catch (error) {
    if (error instanceof TypeError) return 'windows-1252'
    throw error
  }
}

/** All rows of a piece are parsed at once, so pieces are kept small. */
const pieceLength = 8192

/** The source's text in small pieces, without a byte order mark. */
export async function* textOfSource(source: SheetSource, encoding: Encoding): AsyncIterable<string> {
  const decoder = new TextDecoder(encoding)
  for await (const chunk of source.open()) {
    for (let from = 0; from < chunk.length; from += pieceLength) {
      yield decoder.decode(chunk.subarray(from, from + pieceLength), { stream: true })
    }
  }
  yield decoder.decode()
}
