import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openSqliteStore } from '@sumpbook/book'
import { expect, onTestFinished, test } from 'vitest'
import { arriving } from '../../packages/book/src/journal/arriving.ts'
import { checkBook } from './check-book.ts'
import { nothingSent } from './load.ts'
import { imageAfter } from './power-fail-images.ts'
import { eventOf, type FileEvent } from './recorded-writes.ts'

const entry = (n: number) => ({
  id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-03-03T08:00:00.000Z',
  kind: 'reading',
  sump: 's1',
  brix: 4,
  note: 'words '.repeat((n * 37) % 400),
})

/** What changed in a file since it was looked at last, as writes of its sectors. */
function changes(folder: string, name: string, before: Map<string, Buffer>): FileEvent[] {
  const path = join(folder, name)
  const now = existsSync(path) ? readFileSync(path) : Buffer.alloc(0)
  const then = before.get(name) ?? Buffer.alloc(0)
  before.set(name, now)
  const events: FileEvent[] = []
  for (let at = 0; at < now.byteLength; at += 512) {
    const bytes = now.subarray(at, at + 512)
    if (!bytes.equals(then.subarray(at, at + 512))) events.push({ what: 'write', file: name, at, bytes })
  }
  return events
}

/**
 * The book checks that every commit waits for its fsync; so what the log gained by a commit is what a power cut during that commit may have
 * left in part. (`bench/record/power-fail.ts` does the same with the writes themselves, as the system saw them, where `strace` is.)
 */
test('after a power cut during a commit the book opens, is sound, and has everything acknowledged before', {
  timeout: 60_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-power-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const store = await openSqliteStore(join(folder, 'book.sqlite'))
  const seen = new Map<string, Buffer>()
  const looked = () => ['book.sqlite', 'book.sqlite-wal'].flatMap((name) => changes(folder, name, seen))
  const syncs: FileEvent[] = [
    { what: 'sync', file: 'book.sqlite' },
    { what: 'sync', file: 'book.sqlite-wal' },
  ]
  const events: FileEvent[] = [...looked(), ...syncs]
  const start = events.length
  for (let n = 1; n <= 30; n++) {
    await store.write((journal) => journal.append([arriving(entry(n))], entry(n).at))
    events.push(...looked(), ...syncs, { what: 'ack', n })
  }
  await store.close()
  let torn = 0
  for (let n = 0; n < 40; n++) {
    const cut = start + Math.floor((n / 40) * (events.length - start))
    const image = imageAfter(events, cut, Math.random)
    const file = join(folder, `image-${n}.sqlite`)
    for (const [name, bytes] of image.files) writeFileSync(name.replace('book.sqlite', file), bytes)
    const { entries, faults } = await checkBook({ kind: 'file', file }, nothingSent())
    expect(faults).toEqual([])
    expect(entries).toBeGreaterThanOrEqual(image.acknowledged)
    expect(entries).toBeLessThanOrEqual(image.acknowledged + 1)
    if (events[cut]!.what === 'write') torn += 1
  }
  expect(torn).toBeGreaterThan(15)
})

const text = (value: string) => Buffer.from(value)

test('an image has what was synced, and by chance the sectors of what was not', () => {
  const a = Buffer.alloc(512, 'a')
  const b = Buffer.alloc(1024, 'b')
  const events: FileEvent[] = [
    { what: 'write', file: 'f', at: 0, bytes: a },
    { what: 'sync', file: 'f' },
    { what: 'ack', n: 1 },
    { what: 'write', file: 'f', at: 512, bytes: b },
    { what: 'ack', n: 2 },
  ]
  expect(imageAfter(events, 1, () => 0).acknowledged).toBe(0)
  const nothingSince = imageAfter(events, 4, () => 0)
  expect(nothingSince).toMatchObject({ acknowledged: 2 })
  expect(nothingSince.files.get('f')).toEqual(a)
  const chances = [0.5, 0.9, 0.1]
  const second = imageAfter(events, 4, () => chances.shift()!).files.get('f')
  expect(second).toEqual(Buffer.concat([a, Buffer.alloc(512), b.subarray(512)]))
  expect(imageAfter(events, 4, () => 0.99).files.get('f')).toEqual(Buffer.concat([a, b]))
})

test('a recorded line is read with its bytes', () => {
  const hex = (value: string) =>
    [...Buffer.from(value)].map((byte) => `\\x${byte.toString(16).padStart(2, '0')}`).join('')
  const file = hex('/a/book.sqlite-wal')
  expect(eventOf(`pwrite64(22<${file}>, "${hex('abc')}", 3, 4152) = 3`)).toEqual([
    { what: 'write', file: 'book.sqlite-wal', at: 4152, bytes: text('abc') },
  ])
  expect(eventOf(`fdatasync(22<${file}>)            = 0`)).toEqual([{ what: 'sync', file: 'book.sqlite-wal' }])
  expect(eventOf(`ftruncate(22<${file}>, 4096) = 0`)).toEqual([{ what: 'cut', file: 'book.sqlite-wal', size: 4096 }])
  expect(eventOf(`write(1<${hex('pipe:[1]')}>, "${hex('ack 12\n')}", 7) = 7`)).toEqual([{ what: 'ack', n: 12 }])
  expect(eventOf(`pwrite64(23<${hex('/a/other')}>, "${hex('abc')}", 3, 0) = 3`)).toEqual([])
  expect(() => eventOf(`pwrite64(22<${file}>, "${hex('ab')}"..., 3, 0) = 3`)).toThrow('in part')
})
