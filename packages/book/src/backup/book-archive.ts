import { createHash } from 'node:crypto'
import { buffer } from 'node:stream/consumers'
import type { ArrivedBody, BookContent } from '../copy/content.ts'
import { BookError } from '../errors.ts'
import { canonicalJson } from '../journal/canonical.ts'
import { chainHash, emptyHead, type Head } from '../journal/chain.ts'
import type { BesideRow } from '../store/beside.ts'
import type { StoredThing } from '../store/store.ts'
import { compressed, decompressed } from './lines.ts'
import { damaged, memberStream, readArchive } from './read-archive.ts'
import type { ArchiveWriter, Member } from './write-archive.ts'

/** The form of a backup. A newer form has another name, and is refused by what does not know it. */
export const backupFormat = 'sumpbook-backup/1'

/** What a backup says of itself. Nothing of when and where it was made: the same book makes the same bytes. */
export interface Manifest {
  format: typeof backupFormat
  head: Head
  /** When the last entry arrived; null in a book without one. */
  lastArrival: string | null
  entries: number
  things: number
  attachments: number
}

const names = { meta: 'book/meta.jsonl.gz', things: 'book/things.jsonl.gz', entries: 'book/entries.jsonl.gz' }
/** Only in a backup of a book that has people, devices or something held. */
const besideName = 'book/beside.jsonl.gz'
const manifestName = 'manifest.json'
const attachmentsFolder = 'attachments/'

/** The book's parts, into an archive. */
export async function addBook(archive: ArchiveWriter, content: BookContent): Promise<Omit<Manifest, 'attachments'>> {
  const { meta, things, beside, head } = content
  await archive.add(names.meta, compressed(meta.map(canonicalJson)))
  await archive.add(names.things, compressed(things.map(canonicalJson)))
  let lastArrival: string | null = null
  let entries = 0
  async function* lines(): AsyncGenerator<string> {
    for await (const arrived of chained(content)) {
      entries += 1
      lastArrival = arrived.receivedAt
      yield entryLine(arrived)
    }
  }
  await archive.add(names.entries, compressed(lines()))
  if (beside.length > 0) await archive.add(besideName, compressed(beside.map(canonicalJson)))
  return { format: backupFormat, head, lastArrival, entries, things: things.length }
}

export const addAttachment = (archive: ArchiveWriter, name: string, bytes: AsyncIterable<Uint8Array>) =>
  archive.add(attachmentsFolder + name, bytes)

export const addManifest = (archive: ArchiveWriter, manifest: Manifest) =>
  archive.add(manifestName, [Buffer.from(`${canonicalJson(manifest)}\n`)])

/** The body stands in the line as it is, to the letter: it is canonical JSON already. */
const entryLine = ({ seq, receivedAt, hash, body, envelope }: ArrivedBody) =>
  `{"seq":${seq},"receivedAt":${JSON.stringify(receivedAt)},"hash":"${hash}",${envelope === null ? '' : `"envelope":${JSON.stringify(envelope)},`}"body":${body}}`

const entryPattern =
  /^\{"seq":(\d+),"receivedAt":"([^"\\]*)","hash":"([0-9a-f]{64})",(?:"envelope":("(?:[^"\\]|\\.)*"),)?"body":(\{.*\})\}$/s

function readEntry(line: string): ArrivedBody {
  const [, seq, receivedAt, hash, envelope, body] = entryPattern.exec(line) ?? []
  if (seq === undefined) throw damaged(`a line is no entry: ${line.slice(0, 40)}`)
  const sealed = envelope === undefined ? null : (JSON.parse(envelope) as string)
  return { seq: Number(seq), receivedAt: receivedAt!, hash: hash!, body: body!, envelope: sealed }
}

/** Entries one by one, as long as their chain holds, to its end. */
async function* chained(content: BookContent): AsyncGenerator<ArrivedBody> {
  let { seq, hash } = emptyHead
  for await (const entries of content.entries()) {
    for (const arrived of entries) {
      if (arrived.seq !== seq + 1 || arrived.hash !== chainHash(hash, arrived.body, arrived.seq)) {
        throw broken(arrived.seq)
      }
      ;({ seq, hash } = arrived)
      yield arrived
    }
  }
  if (seq !== content.head.seq || hash !== content.head.hash) throw broken(content.head.seq)
}

const broken = (seq: number) =>
  new BookError('damaged-store', `The chain of the book does not hold at place ${seq}: "sumpbook verify" says more.`)

/** A backup that was found whole. */
export interface BookArchive {
  path: string
  manifest: Manifest
  content: BookContent
  attachments: Member[]
}

/**
 * Reads a backup, every byte of it, and the chain of its entries.
 *
 * @throws {BookError} `damaged-backup`, also where it is no backup or one of a newer form
 */
export async function readBookArchive(path: string): Promise<BookArchive> {
  const members = await readArchive(path)
  const of = (name: string) => {
    const member = members.find((one) => one.name === name)
    if (member === undefined) throw damaged(`it has no ${name}`)
    return member
  }
  const manifest = await readManifest(path, of(manifestName))
  const attachments = members.filter(({ name }) => name.startsWith(attachmentsFolder))
  const beside = members.filter(({ name }) => name === besideName)
  const known = [
    ...Object.values(names),
    ...beside.map(({ name }) => name),
    ...attachments.map(({ name }) => name),
    manifestName,
  ]
  if (canonicalJson(members.map(({ name }) => name)) !== canonicalJson(known)) {
    throw damaged('its parts are not those of a backup')
  }
  if (attachments.some(({ name, sha256 }) => name !== attachmentsFolder + sha256)) {
    throw damaged('an attachment is not what its name says')
  }
  const content: BookContent = {
    head: manifest.head,
    meta: await rowsOf(path, of(names.meta), ['key', 'value']),
    things: await rowsOf<StoredThing>(path, of(names.things), ['body', 'id', 'kind', 'position']),
    beside: beside.length === 0 ? [] : await rowsOf<BesideRow>(path, beside[0]!, ['row', 'table']),
    entries: () => entriesOf(path, of(names.entries)),
  }
  const found = {
    ...manifest,
    ...(await counted(content)),
    things: content.things.length,
    attachments: attachments.length,
  }
  if (canonicalJson(found) !== canonicalJson(manifest)) throw damaged('its manifest counts otherwise than its parts')
  return { path, manifest, content, attachments }
}

/** SHA-256 of all that a backup holds, however it is compressed. */
export async function contentDigest(path: string): Promise<string> {
  const { manifest, content, attachments } = await readBookArchive(path)
  const hash = createHash('sha256')
  hash.update(canonicalJson([manifest, content.meta, content.things, content.beside, attachments.map(attachmentName)]))
  for await (const entries of content.entries()) for (const one of entries) hash.update(`${entryLine(one)}\n`)
  return hash.digest('hex')
}

/** The attachment of a member. */
export const attachmentName = ({ name }: Member): string => name.slice(attachmentsFolder.length)

async function readManifest(path: string, member: Member): Promise<Manifest> {
  const text = (await buffer(memberStream(path, member))).toString()
  let manifest: Manifest
  try {
    manifest = JSON.parse(text) as Manifest
  } catch {
    throw damaged('its manifest is not JSON')
  }
  if (manifest.format !== backupFormat) {
    throw new BookError(
      'damaged-backup',
      `This backup has the form "${String(manifest.format)}", and this version reads ${backupFormat}: restore it with the version that made it.`,
    )
  }
  return manifest
}

async function rowsOf<T>(path: string, member: Member, fields: readonly string[]): Promise<T[]> {
  const rows: T[] = []
  for await (const line of linesOf(path, member)) {
    const row = parsed(line)
    if (canonicalJson(Object.keys(row).sort()) !== canonicalJson(fields)) {
      throw damaged(`a line of ${member.name} has other fields than ${fields.join(', ')}`)
    }
    rows.push(row as T)
  }
  return rows
}

function parsed(line: string): object {
  try {
    const row = JSON.parse(line) as unknown
    if (typeof row === 'object' && row !== null) return row
  } catch {
    // Refused below.
  }
  throw damaged(`a line is not JSON: ${line.slice(0, 40)}`)
}

/** Entries handed on at a time. */
const entriesAtOnce = 2000

async function* entriesOf(path: string, member: Member): AsyncGenerator<ArrivedBody[]> {
  let entries: ArrivedBody[] = []
  for await (const line of linesOf(path, member)) {
    if (entries.push(readEntry(line)) < entriesAtOnce) continue
    yield entries
    entries = []
  }
  if (entries.length > 0) yield entries
}

async function* linesOf(path: string, member: Member): AsyncGenerator<string> {
  try {
    yield* decompressed(memberStream(path, member))
  } catch (error) {
    if (error instanceof BookError) throw error
    throw damaged(`${member.name} cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

async function counted(content: BookContent): Promise<Pick<Manifest, 'entries' | 'lastArrival'>> {
  let [entries, lastArrival] = [0, null as string | null]
  try {
    for await (const { receivedAt } of chained(content)) {
      entries += 1
      lastArrival = receivedAt
    }
  } catch (error) {
    if (error instanceof BookError && error.code === 'damaged-store')
      throw damaged('the chain of its entries does not hold')
    throw error
  }
  return { entries, lastArrival }
}
