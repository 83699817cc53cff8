import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, onTestFinished, test, vi } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { verifyStore } from '../integrity/verify-store.ts'
import { openStore } from '../store/open.ts'
import type { StorePlace } from '../store/place.ts'
import type { Store } from '../store/store.ts'
import { opened, places, postgresPlace, testFolder } from '../store/testing.ts'
import { smallShop, testId, testNow, testReading } from '../testing.ts'
import { backUp } from './back-up.ts'
import { restoreDrill } from './drill.ts'
import { restore } from './restore.ts'

const outlasting = places.filter(([name]) => name !== 'in memory')
const fileIn = (folder: string): Extract<StorePlace, { kind: 'file' }> => ({
  kind: 'file',
  file: join(folder, 'book.sqlite'),
})
const attachmentsOf = (folder: string) => join(folder, 'attachments')

async function fill(store: Store): Promise<void> {
  let now = testNow.getTime()
  const book = openBook(store, () => {
    now += 1001
    return new Date(now)
  })
  await importBookFile(store, JSON.stringify(smallShop({ 'of ours': ['kept'] })), testNow)
  for (let n = 1; n <= 20; n++) await book.put(testReading(n, { note: `Säge ${n} “quoted” \u0000 \u2028 {"seq":1}` }))
  await book.put({ id: testId(31), at: '2026-03-03T09:00:00Z', kind: 'void', entry: testId(2), sump: 's1' })
  await book.put(testReading(32, { sump: 'not known' }))
}

/** A folder with a book and two attachments, and a backup of them. */
async function backedUp(place?: StorePlace) {
  const folder = testFolder()
  const there = place ?? fileIn(folder)
  const store = await openStore(there)
  await fill(store)
  mkdirSync(attachmentsOf(folder))
  for (const text of ['a picture', '']) {
    writeFileSync(join(attachmentsOf(folder), createHash('sha256').update(text).digest('hex')), text)
  }
  const file = join(folder, 'backup.tar')
  const report = await store.snapshot((journal) => backUp(journal, file, { attachments: attachmentsOf(folder) }))
  await store.close()
  return { folder, place: there, file, report }
}
const backUpAgain = async (place: StorePlace, folder: string, file: string) =>
  (await opened(place)).snapshot((journal) => backUp(journal, file, { attachments: attachmentsOf(folder) }))

describe.each(outlasting)('a backup, %s', (_, place) => {
  test('restored into an empty place and backed up again it is the same, byte for byte', async () => {
    const { file, report } = await backedUp(await place())
    expect(report).toMatchObject({ entries: 22, things: 5, attachments: 2, head: { seq: 22 } })
    expect(report.lastArrival).toBe('2026-03-03T10:00:22.022Z')
    for (const other of [fileIn(testFolder()), await postgresPlace()]) {
      const folder = testFolder()
      expect(await restore(file, other, { attachments: attachmentsOf(folder) })).toMatchObject({
        entries: 22,
        aside: null,
      })
      expect(await verifyStore(await opened(other), report.head)).toMatchObject({ sound: true, entries: 22 })
      const again = join(folder, 'again.tar')
      await backUpAgain(other, folder, again)
      expect(readFileSync(again).equals(readFileSync(file))).toBe(true)
    }
  })

  test('a place with a book is refused; with replace the book there is moved aside, whole', async () => {
    const { folder, file, place: there, report } = await backedUp(await place())
    const store = await openStore(there)
    await openBook(store, () => testNow).put(testReading(50))
    const moved = await store.sealedHead()
    await store.close()
    const attachments = attachmentsOf(folder)
    await expect(restore(file, there, { attachments })).rejects.toMatchObject({ code: 'store-not-empty' })
    const { aside } = await restore(file, there, { attachments, replace: true })
    const restored = await openStore(there)
    expect(await restored.head()).toMatchObject(report.head)
    await openBook(restored, () => testNow).put(testReading(51))
    await restored.close()
    const before: StorePlace =
      there.kind === 'postgres' ? { ...there, schema: aside!.replace('schema ', '') } : fileIn(aside!)
    const kept = await opened(before)
    expect(await kept.sealedHead()).toEqual(moved)
    expect(await verifyStore(kept)).toMatchObject({ sound: true })
  })

  test('an empty book is backed up and restored too, also over an empty one', async () => {
    const folder = testFolder()
    const file = join(folder, 'backup.tar')
    const there = await place()
    expect(await backUpAgain(there, folder, file)).toMatchObject({ entries: 0, things: 0, lastArrival: null })
    const other = await place()
    await (await openStore(other)).close()
    expect(await restore(file, other, { attachments: attachmentsOf(folder) })).toMatchObject({
      entries: 0,
      aside: null,
    })
    expect((await (await opened(other)).head()).seq).toBe(0)
  })

  test('made while the book is written to, it is of one moment', async () => {
    const there = await place()
    const store = await opened(there)
    await fill(store)
    const book = openBook(store, () => testNow)
    let writing = true
    const writer = (async () => {
      for (let n = 100; writing; n++) await book.putMany([testReading(n), testReading(n + 100_000)])
    })()
    const folder = testFolder()
    for (let n = 0; n < 3; n++) await backUpAgain(there, folder, join(folder, `${n}.tar`))
    writing = false
    await writer
    for (let n = 0; n < 3; n++) {
      const { entries, live } = await restoreDrill(join(folder, `${n}.tar`), store)
      expect(entries % 2).toBe(0)
      expect(live).toEqual({ sameBook: true, arrivedSince: (await store.head()).seq - entries })
    }
  })
})

test('a backup opens with the tools of any system', async () => {
  const { folder, file } = await backedUp()
  const out = join(folder, 'out')
  mkdirSync(out)
  const shell = (command: string) => spawnSync('sh', ['-c', command], { cwd: out, encoding: 'utf8' })
  expect(shell(`tar -xf ${file} && sha256sum --check --strict SHA256SUMS`)).toMatchObject({ status: 0 })
  const entries = shell('gunzip -c book/entries.jsonl.gz').stdout.trimEnd().split('\n')
  expect(entries).toHaveLength(22)
  expect(JSON.parse(entries[0]!)).toMatchObject({ seq: 1, body: testReading(1, { note: expect.any(String) }) })
})

test('the head of a tar’s part is as the standard has it', async () => {
  const { file } = await backedUp()
  const list = spawnSync('tar', ['-tvf', file, '--numeric-owner', '--full-time', '--utc'], { encoding: 'utf8' })
  expect(list.stderr).toBe('')
  expect(list.stdout.split('\n')[0]).toMatch(/^-rw------- 0\/0 +\d+ 1970-01-01 00:00:00 book\/meta.jsonl.gz$/)
})

/** Whole numbers below a bound, the same on every run. */
function chance(seed: number) {
  let state = seed
  return (below: number) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff
    return Math.floor((state / 0x80000000) * below)
  }
}

test('damaged backups are refused and nothing is touched: bits turned, ends cut, parts doubled or taken out', {
  timeout: 60_000,
}, async () => {
  const { folder, file } = await backedUp()
  const bytes = readFileSync(file)
  const place = fileIn(folder)
  const before = readFileSync(place.file)
  const pick = chance(11)
  const damages: [string, Buffer][] = []
  for (let n = 0; n < 150; n++) {
    const turned = Buffer.from(bytes)
    const at = pick(bytes.length)
    turned[at] = turned[at]! ^ (1 << pick(8))
    damages.push([`bit turned at ${at}`, turned])
    const end = pick(bytes.length)
    damages.push([`cut at ${end}`, bytes.subarray(0, end)])
  }
  const blocks = bytes.length / 512
  for (let n = 0; n < 60; n++) {
    const [from, to] = [512 * pick(blocks), 512 * pick(blocks)].sort((a, b) => a - b) as [number, number]
    if (from === to) continue
    damages.push([`blocks ${from} to ${to} taken out`, Buffer.concat([bytes.subarray(0, from), bytes.subarray(to)])])
    damages.push([`blocks ${from} to ${to} doubled`, Buffer.concat([bytes.subarray(0, to), bytes.subarray(from)])])
  }
  damages.push(['something behind the end', Buffer.concat([bytes, Buffer.alloc(512)])])
  damages.push(['nothing', Buffer.alloc(0)])
  damages.push(['no backup', Buffer.from('This is a letter. '.repeat(100))])
  const bad = join(folder, 'bad.tar')
  for (const [damage, content] of damages) {
    writeFileSync(bad, content)
    const refused = restore(bad, place, { attachments: attachmentsOf(folder), replace: true })
    await expect(refused, damage).rejects.toMatchObject({ code: 'damaged-backup' })
  }
  expect(readFileSync(place.file).equals(before)).toBe(true)
  expect(readdirSync(folder).sort()).toEqual(['attachments', 'backup.tar', 'bad.tar', 'book.sqlite'])
})

test('a backup that is not there, and one of a newer form, are refused', async () => {
  const { folder, file } = await backedUp()
  const attachments = attachmentsOf(folder)
  const place = fileIn(testFolder())
  await expect(restore(join(folder, 'none'), place, { attachments })).rejects.toMatchObject({ code: 'damaged-backup' })
  const { addManifest } = await import('./book-archive.ts')
  const { writeArchive } = await import('./write-archive.ts')
  const newer = await writeArchive(join(folder, 'newer'))
  await addManifest(newer, { format: 'sumpbook-backup/2' } as never)
  await newer.finish()
  await expect(restore(join(folder, 'newer'), place, { attachments })).rejects.toMatchObject({
    code: 'damaged-backup',
    message: expect.stringContaining('sumpbook-backup/2'),
  })
  expect(existsSync(place.file)).toBe(false)
  expect(existsSync(file)).toBe(true)
})

test('a book that another program has open is not replaced', async () => {
  const { folder, file, place } = await backedUp()
  const store = await opened(place)
  const again = restore(file, place, { attachments: attachmentsOf(folder), replace: true })
  await expect(again).rejects.toMatchObject({ code: 'store-in-use' })
  await openBook(store, () => testNow).put(testReading(50))
  expect((await store.head()).seq).toBe(23)
})

test('what is left of a destroyed book is moved aside, not thrown away', async () => {
  const { folder, file, place } = await backedUp()
  truncateSync((place as { file: string }).file, 5000)
  const { aside } = await restore(file, place, { attachments: attachmentsOf(folder), replace: true })
  expect(readFileSync(join(aside!, 'book.sqlite'))).toHaveLength(5000)
  expect(await verifyStore(await opened(place))).toMatchObject({ sound: true, entries: 22 })
})

test('a book whose chain does not hold is not backed up over a good backup', async () => {
  const { folder, file, place } = await backedUp()
  const good = readFileSync(file)
  const database = new DatabaseSync((place as { file: string }).file)
  database.exec(`update entry set body = replace(body, '"brix":5', '"brix":6') where seq = 3`)
  database.close()
  await expect(backUpAgain(place, folder, file)).rejects.toMatchObject({ code: 'damaged-store' })
  expect(readFileSync(file).equals(good)).toBe(true)
  expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([])
})

test('an attachment that is damaged is left out and named', async () => {
  const { folder, place, report } = await backedUp()
  const [name = ''] = readdirSync(attachmentsOf(folder))
  writeFileSync(join(attachmentsOf(folder), name), 'another picture')
  writeFileSync(join(attachmentsOf(folder), 'notes.txt'), 'no attachment')
  const again = await backUpAgain(place, folder, join(folder, 'again.tar'))
  expect(again).toMatchObject({ attachments: 1, damagedAttachments: [name], head: report.head })
})

test('a drill restores, compares, and leaves nothing behind', async () => {
  const { file, place } = await backedUp()
  const store = await opened(place)
  await openBook(store, () => testNow).put(testReading(50))
  const temporary = testFolder()
  vi.stubEnv('TMPDIR', temporary)
  onTestFinished(() => void vi.unstubAllEnvs())
  expect(await restoreDrill(file, store)).toMatchObject({
    entries: 22,
    attachments: 2,
    sameBytes: true,
    live: { sameBook: true, arrivedSince: 1 },
  })
  const other = await opened({ kind: 'memory' })
  expect(await restoreDrill(file, other)).toMatchObject({ live: { sameBook: false } })
  expect(await restoreDrill(file, null)).toMatchObject({ live: null })
  truncateSync(file, 3000)
  await expect(restoreDrill(file, null)).rejects.toMatchObject({ code: 'damaged-backup' })
  expect(readdirSync(temporary)).toEqual([])
})
