import { createHash } from 'node:crypto'
import { type FileHandle, open } from 'node:fs/promises'
import { blockSize, headerOf, paddingOf } from './tar-block.ts'

/** A member of an archive: where its bytes lie and what they are. */
export interface Member {
  name: string
  /** Of its first byte in the file. */
  start: number
  size: number
  sha256: string
}

/** An archive that grows member by member. */
export interface ArchiveWriter {
  add(name: string, bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): Promise<Member>
  /** Lists every member's SHA-256, ends the archive and waits until it is on the disk. */
  finish(): Promise<void>
  /** Closes an archive that is not to be finished. */
  abandon(): Promise<void>
}

/** The name of the last member: every other member's SHA-256, in the form that `sha256sum --check` reads. */
export const sumsName = 'SHA256SUMS'

/** Begins an archive: a plain tar whose last member lists the checksums of all others. */
export async function writeArchive(path: string): Promise<ArchiveWriter> {
  const file = await open(path, 'w', 0o600)
  const members: Member[] = []
  let at = 0
  const add = async (name: string, bytes: AsyncIterable<Uint8Array> | Iterable<Uint8Array>) => {
    const hash = createHash('sha256')
    const start = at + blockSize
    let size = 0
    for await (const chunk of bytes) {
      hash.update(chunk)
      await writeAll(file, chunk, start + size)
      size += chunk.byteLength
    }
    // The size is known only now.
    await writeAll(file, headerOf(name, size), at)
    await writeAll(file, Buffer.alloc(paddingOf(size)), start + size)
    at = start + size + paddingOf(size)
    const member = { name, start, size, sha256: hash.digest('hex') }
    members.push(member)
    return member
  }
  return {
    add,
    finish: async () => {
      await add(sumsName, [Buffer.from(sumsOf(members))])
      await writeAll(file, Buffer.alloc(2 * blockSize), at)
      await file.sync()
      await file.close()
    },
    abandon: () => file.close(),
  }
}

/** The text of the list of checksums. */
export const sumsOf = (members: readonly Member[]): string =>
  members.map(({ name, sha256 }) => `${sha256}  ${name}\n`).join('')

async function writeAll(file: FileHandle, bytes: Uint8Array, at: number): Promise<void> {
  for (let done = 0; done < bytes.byteLength; ) {
    const { bytesWritten } = await file.write(bytes, done, bytes.byteLength - done, at + done)
    done += bytesWritten
  }
}
