import { createReadStream } from 'node:fs'

/** Where the bytes of a sheet come from. They are read several times, so `open` starts from the beginning each time. */
export interface SheetSource {
  /** The file's name, as the person knows it. */
  name: string
  /** Where it lies on disk, for a worker thread to read it there. */
  path?: string
  open(): AsyncIterable<Uint8Array> | Iterable<Uint8Array>
}

/** A source that lies in memory. */
export const sourceOf = (name: string, bytes: Uint8Array): SheetSource => ({ name, open: () => [bytes] })

/** A source that lies on disk. */
export const fileSource = (path: string, name = path): SheetSource => ({
  name,
  path,
  open: () => createReadStream(path),
})

/** Bytes that every zip archive, and so every XLSX workbook, begins with. */
const zipMark = [0x50, 0x4b, 0x03, 0x04]
/** Bytes that the binary workbooks of before 2007 begin with (compound file, MS-CFB §2.2). */
const oldWorkbookMark = [0xd0, 0xcf, 0x11, 0xe0]

/** What kind of file it is by its first bytes; its name counts only where there are none. */
export function isWorkbook(name: string, firstBytes: Uint8Array): boolean {
  return firstBytes.length === 0 ? /\.xlsx$/i.test(name) : beginsWith(firstBytes, zipMark)
}

/** Whether it is a binary workbook (`.xls`), which nothing here reads. */
export const isOldWorkbook = (firstBytes: Uint8Array): boolean => beginsWith(firstBytes, oldWorkbookMark)

/** Up to `length` bytes from the beginning. */
export async function firstBytesOf(source: SheetSource, length: number): Promise<Buffer> {
  const chunks: Uint8Array[] = []
  let read = 0
  for await (const chunk of source.open()) {
    chunks.push(chunk)
    read += chunk.length
    if (read >= length) break
  }
  return Buffer.concat(chunks).subarray(0, length)
}

const beginsWith = (bytes: Uint8Array, mark: readonly number[]) => mark.every((byte, i) => bytes[i] === byte)
