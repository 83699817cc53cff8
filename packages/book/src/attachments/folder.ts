import { createHash, randomUUID } from 'node:crypto'
import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { mkdir, open, readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { toDisk } from '../backup/to-disk.ts'

/** An attachment is a file that is called by the SHA-256 of its content, in hexadecimal. */
export const isAttachmentName = (name: string): boolean => /^[0-9a-f]{64}$/.test(name)

/** The attachments in a folder, by name; none where there is no folder. */
export async function attachmentsIn(folder: string): Promise<string[]> {
  if (!existsSync(folder)) return []
  return (await readdir(folder)).filter(isAttachmentName).sort()
}

/** Whether an attachment is what its name says. */
export async function isWhole(folder: string, name: string): Promise<boolean> {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(join(folder, name))) hash.update(chunk as Buffer)
  return hash.digest('hex') === name
}

/**
 * Puts an attachment into a folder, whole or not at all, and on its disk; one that is there already is left as it is.
 *
 * @param bytes checked against the name by the caller
 */
export async function putAttachment(
  folder: string,
  name: string,
  bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
): Promise<void> {
  if (!existsSync(join(folder, name))) await writeAttachment(folder, name, bytes)
}

/** The same in place of one that is there. */
export async function writeAttachment(
  folder: string,
  name: string,
  bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
): Promise<void> {
  const path = join(folder, name)
  // Two phones may send the same picture at once: each writes beside, and the last rename wins with the same bytes.
  const part = `${path}.${randomUUID()}.part`
  await mkdir(folder, { recursive: true, mode: 0o700 })
  try {
    await pipeline(bytes, createWriteStream(part, { mode: 0o600 }))
    const file = await open(part, 'r+')
    await file.sync()
    await file.close()
    await rename(part, path)
    await toDisk(folder)
  } finally {
    await rm(part, { force: true })
  }
}
