import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { open } from 'node:fs/promises'
import { join } from 'node:path'
import { readableWrite } from '../backup/disk-full.ts'
import { BookError, refusal } from '../errors.ts'
import { type AttachmentType, attachmentTypeOf, tellingBytes } from './content-type.ts'
import { isAttachmentName, isWhole, writeAttachment } from './folder.ts'

/** The largest attachment, in bytes: a page scanned in colour; what a phone sends is a tenth of it. */
export const largestAttachment = 10 * 1024 * 1024

/**
 * Takes an attachment under the SHA-256 of its content, exactly once: again it changes nothing, and one that the disk has damaged
 * since is made whole.
 *
 * @throws {BookError} `refused-input`: another content than its name says, or neither picture nor PDF, or too large; `disk-full`
 */
export async function keepAttachment(folder: string, name: string, bytes: Uint8Array): Promise<'added' | 'same'> {
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  if (!isAttachmentName(name)) throw fault(name, 'the SHA-256 of the content, 64 hexadecimal digits in small letters')
  if (sha256 !== name) throw fault(`a content whose SHA-256 is ${sha256}`, `one whose SHA-256 is ${name}`)
  if (bytes.length > largestAttachment) throw fault(`${bytes.length} bytes`, `at most ${largestAttachment}`)
  if (attachmentTypeOf(bytes) === null) {
    throw fault('neither picture nor PDF', 'a picture (JPEG, PNG, GIF, WebP, AVIF, HEIC) or a PDF')
  }
  if (existsSync(join(folder, name)) && (await isWhole(folder, name))) return 'same'
  try {
    await writeAttachment(folder, name, [bytes])
  } catch (error) {
    throw readableWrite(error, 'the attachment')
  }
  return 'added'
}

const fault = (found: string, expected: string) => refusal([{ pointer: '', found, expected }], 'attachment')

/** Where an attachment lies, and what it is. */
export interface KeptAttachment {
  path: string
  bytes: number
  type: AttachmentType
}

/** @throws {BookError} `not-found`, also where what lies under the name is none that would be taken */
export async function keptAttachment(folder: string, name: string): Promise<KeptAttachment> {
  const missing = () => new BookError('not-found', `There is no attachment ${name}.`)
  const path = join(folder, name)
  if (!isAttachmentName(name) || !existsSync(path)) throw missing()
  const file = await open(path, 'r')
  try {
    const head = new Uint8Array(tellingBytes)
    const { bytesRead } = await file.read(head, 0, tellingBytes, 0)
    const type = attachmentTypeOf(head.subarray(0, bytesRead))
    if (type === null) throw missing()
    return { path, bytes: (await file.stat()).size, type }
  } finally {
    await file.close()
  }
}
