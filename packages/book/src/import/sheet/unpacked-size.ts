import { unzipSync } from 'fflate'

/**
 * How many bytes a zip archive unpacks to, by its own directory; nothing is unpacked. The workbook's reader goes by the same directory
 * with the same library, which gives a part no more room than is said there: an archive cannot claim less and take more. Null
 * where it is no archive.
 */
export function unpackedSize(bytes: Uint8Array): number | null {
  let size = 0
  try {
    unzipSync(bytes, {
      filter: ({ originalSize }) => {
        size += originalSize
        return false
      },
    })
  } catch {
    // What is no archive is refused by its reader, with the reason.
    return null
  }
  return size
}
