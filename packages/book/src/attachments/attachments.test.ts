import { createHash } from 'node:crypto'
import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { verifyStore } from '../integrity/verify-store.ts'
import { testFolder } from '../store/testing.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'
import { copyAttachments } from './copy-attachments.ts'
import { keepAttachment, keptAttachment, largestAttachment } from './keep-attachment.ts'
import { withAttachments } from './verify-attachments.ts'

const picture = Buffer.from('\xff\xd8\xff\xe0 a picture', 'latin1')
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const name = sha256(picture)
const folderIn = () => join(testFolder(), 'attachments')

test('an attachment is kept once under the SHA-256 of its content', async () => {
  const folder = folderIn()
  expect(await keepAttachment(folder, name, picture)).toBe('added')
  expect(await keepAttachment(folder, name, picture)).toBe('same')
  expect(readdirSync(folder)).toEqual([name])
  expect(await keptAttachment(folder, name)).toEqual({ path: join(folder, name), bytes: 14, type: 'image/jpeg' })
})

test('the same picture from many phones at once is there once', async () => {
  const folder = folderIn()
  await Promise.all(Array.from({ length: 20 }, () => keepAttachment(folder, name, picture)))
  expect(readdirSync(folder)).toEqual([name])
})

test('one that the disk damaged is made whole by who sends it again', async () => {
  const folder = folderIn()
  await keepAttachment(folder, name, picture)
  writeFileSync(join(folder, name), '\xff\xd8\xff\xe0 a pictur', 'latin1')
  expect(await keepAttachment(folder, name, picture)).toBe('added')
  expect((await keptAttachment(folder, name)).bytes).toBe(14)
})

test.each([
  ['another content than its name says', sha256(Buffer.from('other')), picture, `one whose SHA-256 is`],
  ['a name in capitals', name.toUpperCase(), picture, 'in small letters'],
  ['a way out of the folder', '../book.sqlite', picture, '64 hexadecimal digits'],
])('%s is refused, and nothing is written', async (_, asked, bytes, expected) => {
  const folder = folderIn()
  const error = await keepAttachment(folder, asked, bytes).catch((caught: unknown) => caught)
  expect(error).toMatchObject({ code: 'refused-input' })
  expect((error as { faults: { expected: string }[] }).faults[0]!.expected).toContain(expected)
  expect(existsSync(folder)).toBe(false)
})

test('a page that calls itself a picture is refused', async () => {
  const page = Buffer.from('<html><script>alert(1)</script>')
  await expect(keepAttachment(folderIn(), sha256(page), page)).rejects.toMatchObject({ code: 'refused-input' })
})

test('the largest attachment is taken, one byte more is refused', async () => {
  const folder = folderIn()
  const large = Buffer.alloc(largestAttachment, picture)
  expect(await keepAttachment(folder, sha256(large), large)).toBe('added')
  const larger = Buffer.alloc(largestAttachment + 1, picture)
  await expect(keepAttachment(folder, sha256(larger), larger)).rejects.toMatchObject({ code: 'refused-input' })
})

test('what is no attachment is not given out, whatever its name', async () => {
  const folder = folderIn()
  await keepAttachment(folder, name, picture)
  const page = Buffer.from('<html>')
  writeFileSync(join(folder, sha256(page)), page)
  for (const asked of ['../book.sqlite', 'f'.repeat(64), sha256(page)]) {
    await expect(keptAttachment(folder, asked)).rejects.toMatchObject({ code: 'not-found' })
  }
})

test('verify remarks on a picture that has not arrived, and calls a damaged one a fault', async () => {
  const store = await emptyStore()
  const folder = folderIn()
  await importBookFile(store, JSON.stringify(smallShop()), testNow)
  const at = '2026-03-03T09:00:00Z'
  const seen = { at, kind: 'observation', sump: 's1', signs: ['foam'], photo: name }
  await openBook(store, () => testNow).put({ ...seen, id: testId(1) })
  const verified = async () => withAttachments(await verifyStore(store), store, folder)
  expect(await verified()).toMatchObject({
    sound: true,
    remarks: [`The entry ${testId(1)} names the attachment ${name}, which has not arrived.`],
  })
  await keepAttachment(folder, name, picture)
  expect(await verified()).toMatchObject({ sound: true, faults: [], remarks: [] })
  writeFileSync(join(folder, name), 'other')
  expect(await verified()).toMatchObject({ sound: false, faults: [{ id: `attachment ${name}` }] })
})

test('attachments go where the book goes; a damaged one stays behind and is named', async () => {
  const [from, to] = [folderIn(), folderIn()]
  const other = Buffer.from('%PDF-1.7 a sheet')
  await keepAttachment(from, name, picture)
  await keepAttachment(from, sha256(other), other)
  writeFileSync(join(from, sha256(other)), 'damaged')
  expect(await copyAttachments(from, to)).toEqual({ copied: 1, damaged: [sha256(other)] })
  expect(readdirSync(to)).toEqual([name])
  expect(await copyAttachments(from, from)).toEqual({ copied: 0, damaged: [] })
})
