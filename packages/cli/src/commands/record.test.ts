import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Readable, Writable } from 'node:stream'
import { expect, onTestFinished, test } from 'vitest'
import { postgresPlace } from '../../../book/src/store/testing.ts'
import { main } from '../main.ts'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200 }],
  entries: [1, 2, 3].map((n) => ({ id: id(n), at: '2026-03-03T09:30:00Z', kind: 'reading', sump: 's1', brix: n + 2 })),
}

class Sink extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

async function run(cwd: string, ...args: string[]) {
  const [stdout, stderr] = [new Sink(), new Sink()]
  const code = await main(args, { env: {}, stdin: Readable.from([]), stdout, stderr, cwd: () => cwd })
  return { code, out: stdout.text, err: stderr.text }
}

function emptyFolder(): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-record-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

/** A folder whose book, in `data`, holds the shop. */
async function shopFolder(): Promise<string> {
  const cwd = emptyFolder()
  writeFileSync(join(cwd, 'shop.json'), JSON.stringify(shop))
  expect(await run(cwd, 'import', join(cwd, 'shop.json'))).toMatchObject({ code: 0, err: '' })
  return cwd
}

function change(cwd: string, statement: string): void {
  const database = new DatabaseSync(join(cwd, 'data', 'book.sqlite'))
  database.exec(statement)
  database.close()
}

test('verify ends with 0 where the book is as it was written, and prints the end of the chain', async () => {
  const cwd = await shopFolder()
  const { code, out } = await run(cwd, 'verify')
  expect(code).toBe(0)
  expect(out).toMatch(/^The book is as it was written: 3 entries, 2 things\.\nIts chain ends at 3:[0-9a-f]{64}\n$/)
  const [head = ''] = /3:[0-9a-f]{64}/.exec(out) ?? []
  expect(await run(cwd, 'verify', '--head', head.slice(0, 14))).toMatchObject({ code: 0 })
  expect(await run(cwd, 'verify', '--head', '3:00000000')).toMatchObject({ code: 1 })
})

test('verify ends with 1 and the first fault, also as JSON', async () => {
  const cwd = await shopFolder()
  change(cwd, `update entry set body = replace(body, '"brix":4', '"brix":5') where seq = 2`)
  const { code, out } = await run(cwd, 'verify')
  expect(code).toBe(1)
  expect(out).toContain(`place 2, entry ${id(2)}: its hash is not that of its body`)
  const json = await run(cwd, 'verify', '--json')
  expect(json.code).toBe(1)
  expect(JSON.parse(json.out)).toMatchObject({ sound: false, entries: 3, faults: [{ seq: 2, id: id(2) }] })
})

test('verify does not make a book where there is none', async () => {
  const cwd = emptyFolder()
  expect(await run(cwd, 'verify', '--data', 'nowhere')).toMatchObject({ code: 6, out: '' })
  expect(existsSync(join(cwd, 'nowhere'))).toBe(false)
})

test('move-store copies a book into a database and back into a folder', async () => {
  const cwd = await shopFolder()
  const { url, schema } = await postgresPlace()
  const there = await run(cwd, 'move-store', '--to', url, '--to-schema', schema)
  expect(there).toMatchObject({ code: 0, err: '', out: expect.stringContaining('3 entries and 2 things are now in') })
  const source = ['--database-url', url, '--schema', schema]
  expect(await run(cwd, 'move-store', '--to', 'back', ...source)).toMatchObject({ code: 0 })
  await run(cwd, 'export', join(cwd, 'before.json'))
  await run(cwd, 'export', join(cwd, 'after.json'), '--data', 'back')
  await run(cwd, 'export', join(cwd, 'between.json'), ...source)
  const before = readFileSync(join(cwd, 'before.json'), 'utf8')
  expect(JSON.parse(before)).toEqual(shop)
  expect(readFileSync(join(cwd, 'after.json'), 'utf8')).toBe(before)
  expect(readFileSync(join(cwd, 'between.json'), 'utf8')).toBe(before)
  expect((await run(cwd, 'verify', '--data', 'back')).out).toBe((await run(cwd, 'verify')).out)
})

test('move-store refuses a place with a book, a missing book and a missing place', async () => {
  const cwd = await shopFolder()
  expect(await run(cwd, 'move-store', '--to', 'data')).toMatchObject({ code: 3, out: '' })
  expect(await run(cwd, 'move-store', '--to', 'new', '--data', 'nowhere')).toMatchObject({ code: 6, out: '' })
  expect(await run(cwd, 'move-store')).toMatchObject({ code: 2, out: '' })
  expect(await run(cwd, 'move-store', '--to', 'new', '--to-schema', 'x')).toMatchObject({ code: 2, out: '' })
})

test('a backup is restored into an empty folder, and not over a book unless told so', async () => {
  const cwd = await shopFolder()
  const file = join(cwd, 'shop.sumpbook.tar')
  const made = await run(cwd, 'backup', 'shop.sumpbook.tar', '--drill')
  expect(made).toMatchObject({ code: 0, err: '', out: expect.stringContaining('3 entries, 2 things, 0 attachments') })
  expect(made.out).toContain('The drill went well')
  expect(await run(cwd, 'restore', file, '--data', 'other')).toMatchObject({ code: 0, err: '' })
  expect((await run(cwd, 'export', '-', '--data', 'other')).out).toBe((await run(cwd, 'export', '-')).out)
  expect(await run(cwd, 'restore', file)).toMatchObject({ code: 3, out: '', err: expect.stringContaining('--replace') })
  const replaced = await run(cwd, 'restore', file, '--replace')
  expect(replaced).toMatchObject({ code: 0, out: expect.stringContaining(join(cwd, 'data', 'before-restore-1')) })
  await run(cwd, 'backup', 'again.tar')
  expect(readFileSync(join(cwd, 'again.tar')).equals(readFileSync(file))).toBe(true)
})

test('a restore drill changes nothing, and says how the backup stands to the book', async () => {
  const cwd = await shopFolder()
  await run(cwd, 'backup', 'shop.tar')
  const drill = await run(cwd, 'restore', 'shop.tar', '--drill')
  expect(drill).toMatchObject({ code: 0, out: expect.stringContaining('0 entries have arrived in the book since') })
  const json = JSON.parse((await run(cwd, 'restore', 'shop.tar', '--drill', '--json', '--data', 'nowhere')).out)
  expect(json).toMatchObject({ entries: 3, live: null, sameBytes: true })
  expect(existsSync(join(cwd, 'nowhere'))).toBe(false)
})

test('a damaged backup is refused by drill and restore, and the book stays', async () => {
  const cwd = await shopFolder()
  await run(cwd, 'backup', 'shop.tar')
  const bytes = readFileSync(join(cwd, 'shop.tar'))
  bytes[700] = bytes[700]! ^ 1
  writeFileSync(join(cwd, 'shop.tar'), bytes)
  for (const how of ['--drill', '--replace']) {
    const { code, out, err } = await run(cwd, 'restore', 'shop.tar', how)
    expect({ code, out }).toEqual({ code: 3, out: '' })
    expect(err).toContain('The backup is not whole')
  }
  expect(await run(cwd, 'verify')).toMatchObject({ code: 0 })
})

test('there is no backup of a book that is not there', async () => {
  const cwd = emptyFolder()
  expect(await run(cwd, 'backup', 'shop.tar')).toMatchObject({ code: 6, out: '' })
  expect(existsSync(join(cwd, 'shop.tar'))).toBe(false)
})

test('move-store takes attachments along, and leaves a damaged one behind by name', async () => {
  const cwd = await shopFolder()
  // SHA-256 of "abc": FIPS 180-2, appendix B.1.
  const name = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
  const damaged = '0'.repeat(64)
  mkdirSync(join(cwd, 'data', 'attachments'))
  writeFileSync(join(cwd, 'data', 'attachments', name), 'abc')
  writeFileSync(join(cwd, 'data', 'attachments', damaged), 'abc')
  const { code, err } = await run(cwd, 'move-store', '--to', 'other')
  expect(code).toBe(1)
  expect(err).toBe(`Left behind, since it is damaged: attachment ${damaged}\n`)
  expect(readdirSync(join(cwd, 'other', 'attachments'))).toEqual([name])
  expect(await run(cwd, 'verify', '--data', 'other')).toMatchObject({ code: 0 })
  const verified = await run(cwd, 'verify')
  expect(verified.code).toBe(1)
  expect(verified.out).toContain(`attachment ${damaged}: its content is not what its name says`)
})
