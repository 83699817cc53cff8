import { say } from '@sumpbook/fluid'
/** Pixels of the longest side: a page of print or foam on a sump is still read, in some 300 KB. */
export const longestSide = 1600
/** The quality of the JPEG, 0 to 1. */
const quality = 0.8

/** Width and height in pixels. */
export interface Size {
  width: number
  height: number
}

/** The picture's size on its way out: its shape kept, never larger than it was, never without a pixel. */
export function shrunkSize({ width, height }: Size, longest: number = longestSide): Size {
  const scale = Math.min(1, longest / Math.max(width, height))
  const shrunk = (side: number) => Math.max(1, Math.round(side * scale))
  return { width: shrunk(width), height: shrunk(height) }
}

/** What decodes and draws; the browser's own without another. */
export interface Drawing {
  /** Upright, as the camera's mark of its own position says. */
  decode(file: Blob): Promise<Size & { close?(): void }>
  /** A JPEG of the picture drawn at a size; null where the browser cannot. */
  encode(picture: Size, size: Size, quality: number): Promise<Blob | null>
}

/** A picture that cannot be sent. */
export class NoPhoto extends Error {}

/**
 * A photo as it leaves the device: drawn anew at a smaller size, so that nothing of the file stays but what is seen. Where and when it
 * was taken, with what, and the small copy inside the file are gone; the bytes are looked through once more for that.
 *
 * @throws {NoPhoto} with a sentence for the person who took it
 */
export async function shrinkPhoto(
  file: Blob,
  { decode, encode }: Drawing = browserDrawing,
): Promise<Uint8Array<ArrayBuffer>> {
  const picture = await decode(file).catch(() => {
    throw new NoPhoto(say('This browser cannot read the picture: expected a photo such as JPEG or PNG.'))
  })
  try {
    const jpeg = await encode(picture, shrunkSize(picture), quality)
    if (jpeg === null) throw new NoPhoto(say('This browser cannot make the picture smaller: it was not taken.'))
    const bytes = new Uint8Array(await jpeg.arrayBuffer())
    if (metadataIn(bytes).length > 0)
      throw new NoPhoto(say('The picture still says more than it shows: it was not taken.'))
    return bytes
  } finally {
    picture.close?.()
  }
}

const browserDrawing: Drawing = {
  decode: (file) => createImageBitmap(file, { imageOrientation: 'from-image' }),
  encode: async (picture, { width, height }, wanted) => {
    const canvas = document.createElement('canvas')
    canvas.width = width
    canvas.height = height
    const context = canvas.getContext('2d')
    if (context === null) return null
    // A JPEG has no see-through: what was, is white and not black.
    context.fillStyle = '#fff'
    context.fillRect(0, 0, width, height)
    context.drawImage(picture as ImageBitmap, 0, 0, width, height)
    return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', wanted))
  },
}

/** Segments of a JPEG that can hold words about the picture: everything for applications but JFIF's and the colour transform, and comments. */
const isWords = (marker: number) =>
  (marker > 0xe0 && marker <= 0xef && marker !== 0xe2 && marker !== 0xee) || marker === 0xfe

/**
 * The markers of a JPEG's segments that say something beside the picture (EXIF, XMP, IPTC, comments); of what is no JPEG, `[0]`.
 *
 * Source: ITU-T T.81 §B.1.1: marker segments up to the start of scan, each with its length. EXIF and XMP stand in APP1, IPTC in APP13.
 */
export function metadataIn(bytes: Uint8Array): number[] {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return [0]
  const found: number[] = []
  for (let place = 2; place + 4 <= bytes.length; ) {
    const marker = bytes[place + 1]!
    if (bytes[place] !== 0xff) return [0]
    if (marker === 0xda) return found
    if (isWords(marker)) found.push(marker)
    place += 2 + bytes[place + 2]! * 256 + bytes[place + 3]!
  }
  return found
}
