import { pipeline } from 'node:stream'
import { createGunzip, createGzip } from 'node:zlib'

/** Lines as compressed bytes, in pieces of the same size whatever the lines' source: the same lines give the same bytes. */
export function compressed(lines: AsyncIterable<string> | Iterable<string>): AsyncIterable<Buffer> {
  // pipeline hands an error of the lines on to whoever reads the bytes.
  return pipeline(evenPieces(lines), createGzip({ level: 6 }), () => {})
}

const pieceSize = 1 << 16

async function* evenPieces(lines: AsyncIterable<string> | Iterable<string>): AsyncGenerator<Buffer> {
  let parts: Buffer[] = []
  let size = 0
  for await (const line of lines) {
    const bytes = Buffer.from(`${line}\n`)
    parts.push(bytes)
    size += bytes.byteLength
    if (size < pieceSize) continue
    const all = Buffer.concat(parts)
    let at = 0
    for (; size - at >= pieceSize; at += pieceSize) yield all.subarray(at, at + pieceSize)
    parts = [all.subarray(at)]
    size -= at
  }
  if (size > 0) yield Buffer.concat(parts)
}

/** The lines of compressed bytes; a line ends with a line feed and nothing else. */
export async function* decompressed(bytes: AsyncIterable<Buffer>): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  let rest = ''
  for await (const chunk of pipeline(bytes, createGunzip(), () => {})) {
    const lines = (rest + decoder.decode(chunk as Buffer, { stream: true })).split('\n')
    rest = lines.pop()!
    yield* lines
  }
  if (rest + decoder.decode() !== '') throw new RangeError('the last line has no end')
}
