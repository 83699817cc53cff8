/** Everything in a tar stands in blocks of this many bytes. */
export const blockSize = 512

/** The largest member its header can tell: 8 GiB less one byte. */
const largestSize = 8 ** 11 - 1

/**
 * The header of a member in the interchange format of POSIX.1-1988 (`ustar`): a plain file, owned by nobody, made at no time, so that
 * the same content makes the same bytes. A reader makes the header anew from name and size and compares: there is one
 * spelling.
 *
 * Source: POSIX.1-2017, pax, "ustar Interchange Format".
 */
export function headerOf(name: string, size: number): Buffer {
  if (Buffer.byteLength(name) > 100 || !(size >= 0 && size <= largestSize)) {
    throw new RangeError(`a member that a tar cannot hold: ${name}, ${size} bytes`)
  }
  const header = Buffer.alloc(blockSize)
  const put = (text: string, at: number) => header.write(text, at, 'utf8')
  put(name, 0)
  put('0000600\0', 100)
  put('0000000\0', 108)
  put('0000000\0', 116)
  put(`${size.toString(8).padStart(11, '0')}\0`, 124)
  put('00000000000\0', 136)
  put('        ', 148)
  put('0', 156)
  put('ustar\x0000', 257)
  const sum = header.reduce((total, byte) => total + byte, 0)
  put(`${sum.toString(8).padStart(6, '0')}\0 `, 148)
  return header
}

/** Name and size of a header; null where it is not one this module makes. */
export function readHeader(header: Buffer): { name: string; size: number } | null {
  const end = header.indexOf(0)
  const name = header.toString('utf8', 0, end === -1 ? 100 : Math.min(end, 100))
  const size = Number.parseInt(header.toString('latin1', 124, 135), 8)
  if (name === '' || !Number.isSafeInteger(size) || size < 0) return null
  return headerOf(name, size).equals(header) ? { name, size } : null
}

/** Bytes of zero between the end of a member and the next block. */
export const paddingOf = (size: number): number => (blockSize - (size % blockSize)) % blockSize
