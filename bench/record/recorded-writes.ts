import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** What a program did to its files, in order. */
export type FileEvent =
  | { what: 'write'; file: string; at: number; bytes: Buffer }
  | { what: 'cut'; file: string; size: number }
  | { what: 'sync'; file: string }
  | { what: 'removal'; file: string }
  | { what: 'ack'; n: number }

const program = fileURLToPath(new URL('power-fail-writer.ts', import.meta.url))

/**
 * Runs the writing program under `strace` and gives every write, truncation and fsync of the book's files with its bytes, and the moments
 * at which an entry was acknowledged, in the order in which the system saw them. The log's index in shared memory is left out: it is
 * made anew after a crash.
 *
 * @throws where there is no `strace`
 */
export function recordWrites(
  folder: string,
  { entries, synchronous }: { entries: number; synchronous: string },
): FileEvent[] {
  const book = join(folder, 'book.sqlite')
  const calls = 'pwrite64,pwritev,write,writev,fsync,fdatasync,ftruncate,unlink,unlinkat'
  const { error, stderr } = spawnSync(
    'strace',
    ['-ff', '-y', '-xx', '-s', '100000', '-e', `trace=${calls}`, '-o', join(folder, 'trace')].concat([
      process.execPath,
      program,
      book,
      String(entries),
      synchronous,
    ]),
    { encoding: 'utf8' },
  )
  if (error !== undefined) throw new Error(`the writing program cannot be recorded: ${error.message}`)
  const threads = readdirSync(folder)
    .filter((name) => name.startsWith('trace.'))
    .map((name) => readFileSync(join(folder, name), 'latin1').split('\n'))
    .map((lines) => lines.flatMap(eventOf))
    .filter((events) => events.some(({ what }) => what === 'write'))
  // SQLite works in the main thread alone: its order is the order.
  if (threads.length !== 1) throw new Error(`the book's files were written by ${threads.length} threads: ${stderr}`)
  return threads[0]!
}

const removalPattern = /^unlink(?:at)?\((?:AT_FDCWD[^,]*, )?"([^"]*)"(?:, 0)?\)\s+= 0/
const callPattern = /^(\w+)\((\d+)<([^>]*)>(?:, (.*))?\)\s+= (-?\d+)/

/** What a line of the record says of the book’s files; nothing where it says nothing. */
export function eventOf(line: string): FileEvent[] {
  const removed = removalPattern.exec(line)?.[1]
  if (removed !== undefined) return [{ what: 'removal', file: basename(unescaped(removed).toString()) }]
  const [, call, descriptor, path, rest = '', result] = callPattern.exec(line) ?? []
  if (call === undefined || Number(result) < 0) return []
  if (call === 'write' && descriptor === '1') {
    const [, n] = /^ack (\d+)\n$/.exec(bytesOf(rest).toString()) ?? []
    return n === undefined ? [] : [{ what: 'ack', n: Number(n) }]
  }
  const file = basename(unescaped(path!).toString())
  if (file !== 'book.sqlite' && file !== 'book.sqlite-wal' && file !== 'book.sqlite-journal') return []
  if (call === 'fsync' || call === 'fdatasync') return [{ what: 'sync', file }]
  if (call === 'ftruncate') return [{ what: 'cut', file, size: Number(rest) }]
  if (call === 'pwrite64') {
    const bytes = bytesOf(rest)
    const [, length, at] = /, (\d+), (\d+)$/.exec(rest) ?? []
    if (bytes.byteLength !== Number(length)) throw new Error(`a write was recorded in part: ${rest.slice(-40)}`)
    return [{ what: 'write', file, at: Number(at), bytes: bytes.subarray(0, Number(result)) }]
  }
  throw new Error(`a call that is not understood: ${call} of ${file}`)
}

function bytesOf(rest: string): Buffer {
  const [, text = ''] = /^"([^"]*)"/.exec(rest) ?? []
  return unescaped(text)
}

const unescaped = (text: string): Buffer =>
  text.startsWith('\\x') ? Buffer.from(text.replaceAll('\\x', ''), 'hex') : Buffer.from(text, 'latin1')
