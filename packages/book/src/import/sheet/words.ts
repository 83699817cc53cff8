/**
 * Words as they are compared: lower case, marks of letters and punctuation gone, single blanks between.
 *
 * @example plain('  Füllstand:') // 'fullstand'
 */
export function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/[^\p{L}\p{N}%°]+/gu, ' ')
    .trim()
}

/** A name of a machine as it is compared: case, doubled blanks and blanks at the ends do not count. */
export const sameName = (text: string): string => text.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()

/** A key of a map or a heading inside a JSON Pointer (RFC 6901). */
export const pointerKey = (text: string): string => text.replaceAll('~', '~0').replaceAll('/', '~1')
