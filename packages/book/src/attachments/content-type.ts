/** What an attachment may be: a picture, or a paper scanned or sent as PDF. */
export type AttachmentType =
  | 'image/jpeg'
  | 'image/png'
  | 'image/gif'
  | 'image/webp'
  | 'image/avif'
  | 'image/heic'
  | 'application/pdf'

/** So many bytes from the beginning are enough to tell. */
export const tellingBytes = 32

/**
 * What a file is by its first bytes; its name and what the sender calls it do not count. Null for everything that is not taken, pictures
 * that can hold a program (SVG) included.
 *
 * Source: PNG, third edition, §5.2 (signature); ITU-T T.81 annex B (SOI and the marker after it); GIF89a §17; RFC 9649 (WebP in RIFF);
 * ISO/IEC 14496-12 §4.3 (`ftyp` and its brands); ISO 32000-2 §7.5.2 (`%PDF-`).
 */
export function attachmentTypeOf(head: Uint8Array): AttachmentType | null {
  const text = Buffer.from(head.subarray(0, tellingBytes)).toString('latin1')
  if (text.startsWith('\xff\xd8\xff')) return 'image/jpeg'
  if (text.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png'
  if (/^GIF8[79]a/.test(text)) return 'image/gif'
  if (text.startsWith('RIFF') && text.startsWith('WEBP', 8)) return 'image/webp'
  if (text.startsWith('%PDF-')) return 'application/pdf'
  return text.startsWith('ftyp', 4) ? byBrand(text.slice(8, 12)) : null
}

/** Films begin with `ftyp` too: only the brands of still pictures are taken. */
function byBrand(brand: string): AttachmentType | null {
  if (brand === 'avif') return 'image/avif'
  return ['heic', 'heix', 'mif1'].includes(brand) ? 'image/heic' : null
}
