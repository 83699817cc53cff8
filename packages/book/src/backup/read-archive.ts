import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, open } from 'node:fs/promises'
import { BookError } from '../errors.ts'
import { blockSize, paddingOf, readHeader } from './tar-block.ts'
import { type Member, sumsName, sumsOf } from './write-archive.ts'

/** Bytes read at a time. */
const chunkSize = 1 << 20

export const damaged = (why: string): BookError =>
  new BookError('damaged-backup', `The backup is not whole: ${why}. Nothing was changed.`)

/**
 * The members of an archive, every byte of it accounted for: headers in their one spelling, contents by their checksum, zeros between
 * and behind, nothing after the end.
 *
 * @throws {BookError} `damaged-backup`
 */
export async function readArchive(path: string): Promise<Member[]> {
  const file = await open(path, 'r').catch((error: Error) => {
    throw damaged(`it cannot be opened (${error.message})`)
  })
  try {
    const { size: length } = await file.stat()
    const members: Member[] = []
    for (let at = 0; ; ) {
      const member = await readMember(file, at, length)
      at = member.start + member.size + paddingOf(member.size)
      if (member.name === sumsName) {
        await compareSums(file, member, members)
        await expectEnd(file, at, length)
        return members
      }
      members.push(member)
    }
  } finally {
    await file.close()
  }
}

async function readMember(file: FileHandle, at: number, length: number): Promise<Member> {
  const header = readHeader(await bytesAt(file, at, blockSize, length))
  if (header === null) throw damaged(`what stands at byte ${at} is not the head of a part`)
  const { name, size } = header
  const start = at + blockSize
  const hash = createHash('sha256')
  for (let done = 0; done < size; done += chunkSize) {
    hash.update(await bytesAt(file, start + done, Math.min(chunkSize, size - done), length))
  }
  await expectZeros(file, start + size, paddingOf(size), length)
  return { name, start, size, sha256: hash.digest('hex') }
}

async function compareSums(file: FileHandle, { start, size }: Member, members: readonly Member[]): Promise<void> {
  const expected = sumsOf(members)
  const length = start + size
  const found = size === Buffer.byteLength(expected) ? (await bytesAt(file, start, size, length)).toString() : ''
  if (found === expected) return
  const lines = new Set(found.split('\n'))
  const wrong = members.find(({ name, sha256 }) => !lines.has(`${sha256}  ${name}`))
  throw damaged(wrong === undefined ? 'its list of checksums is damaged' : `${wrong.name} or its checksum is damaged`)
}

async function expectEnd(file: FileHandle, at: number, length: number): Promise<void> {
  await expectZeros(file, at, 2 * blockSize, length)
  if (length !== at + 2 * blockSize) throw damaged('something stands behind its end')
}

async function expectZeros(file: FileHandle, at: number, count: number, length: number): Promise<void> {
  if (!(await bytesAt(file, at, count, length)).every((byte) => byte === 0)) {
    throw damaged(`there should be nothing at byte ${at}`)
  }
}

async function bytesAt(file: FileHandle, at: number, count: number, length: number): Promise<Buffer> {
  if (at + count > length) throw damaged(`it ends early, at byte ${length}`)
  const bytes = Buffer.alloc(count)
  for (let done = 0; done < count; ) {
    const { bytesRead } = await file.read(bytes, done, count - done, at + done)
    if (bytesRead === 0) throw damaged(`it ends early, at byte ${at + done}`)
    done += bytesRead
  }
  return bytes
}

/** The bytes of a member, as a stream. */
export const memberStream = (path: string, { start, size }: Member): AsyncIterable<Buffer> =>
  size === 0 ? emptyStream() : createReadStream(path, { start, end: start + size - 1, highWaterMark: chunkSize })

async function* emptyStream(): AsyncGenerator<Buffer> {}
