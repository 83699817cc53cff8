import decodeQR from 'qr/decode.js'

/** A picture as a canvas gives it, four bytes a pixel. */
type Picture = Pick<ImageData, 'data' | 'width' | 'height'>

/**
 * The text of the QR code (ISO/IEC 18004) in a picture; null where there is none that can be read.
 *
 * @param timeLimit how long it may try, ms, beyond one plain look
 */
export function readCode({ data, width, height }: Picture, timeLimit: number): string | null {
  try {
    const text = decodeQR({ data, width, height }, { format: 'RGBA', timeLimit })
    return text === '' ? null : text
  } catch {
    // The library says so by an error, whatever the reason.
    return null
  }
}
