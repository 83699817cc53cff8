import { createReadStream } from 'node:fs'
import { mkdir, rename, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { attachmentsIn, isWhole } from '../attachments/folder.ts'
import { contentOf } from '../copy/content.ts'
import type { JournalReader } from '../store/store.ts'
import { addAttachment, addBook, addManifest, type Manifest, readBookArchive } from './book-archive.ts'
import { readableWrite } from './disk-full.ts'
import { toDisk } from './to-disk.ts'
import { type ArchiveWriter, writeArchive } from './write-archive.ts'

/** What a backup took in. */
export interface BackupReport extends Manifest {
  file: string
  /** Attachments that are no longer what their name says: they were left out. */
  damagedAttachments: string[]
}

/**
 * Writes a backup of one moment of a book, while others write: one file, read back and found whole before it takes its name. The
 * file that had the name before is replaced only then.
 *
 * @param journal a snapshot
 * @param attachments the folder of attachments; it need not exist
 * @throws {BookError} `damaged-store` where the book's chain does not hold: earlier backups are better then; `disk-full`
 */
export async function backUp(
  journal: JournalReader,
  file: string,
  { attachments }: { attachments?: string } = {},
): Promise<BackupReport> {
  const part = `${file}.part`
  try {
    await mkdir(dirname(file), { recursive: true })
    const damagedAttachments = await written(part, (archive) => addAll(archive, journal, attachments))
    const { manifest } = await readBookArchive(part)
    await rename(part, file)
    await toDisk(dirname(file))
    return { file, ...manifest, damagedAttachments }
  } catch (error) {
    throw readableWrite(error, `the backup ${file}`)
  } finally {
    await rm(part, { force: true })
  }
}

async function written<T>(path: string, add: (archive: ArchiveWriter) => Promise<T>): Promise<T> {
  const archive = await writeArchive(path)
  let finished = false
  try {
    const result = await add(archive)
    await archive.finish()
    finished = true
    return result
  } finally {
    if (!finished) await archive.abandon()
  }
}

async function addAll(archive: ArchiveWriter, journal: JournalReader, folder: string | undefined): Promise<string[]> {
  const manifest = await addBook(archive, await contentOf(journal))
  // Listed after the entries were read: whatever they name is there.
  const names = folder === undefined ? [] : await attachmentsIn(folder)
  const left: string[] = []
  for (const name of names) {
    if (await isWhole(folder!, name)) await addAttachment(archive, name, createReadStream(join(folder!, name)))
    else left.push(name)
  }
  await addManifest(archive, { ...manifest, attachments: names.length - left.length })
  return left
}
