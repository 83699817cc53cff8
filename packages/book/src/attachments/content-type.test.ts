import { expect, test } from 'vitest'
import { attachmentTypeOf } from './content-type.ts'

const bytes = (text: string) => Buffer.from(text, 'latin1')

// The signatures are written out from the standards that the module names.
test.each([
  ['a JPEG', '\xff\xd8\xff\xe0\0\x10JFIF\0', 'image/jpeg'],
  ['a PNG', '\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'image/png'],
  ['a GIF', 'GIF89a\x01\0\x01\0', 'image/gif'],
  ['a WebP', 'RIFF\x24\0\0\0WEBPVP8 ', 'image/webp'],
  ['an AVIF', '\0\0\0\x20ftypavif\0\0\0\0', 'image/avif'],
  ['a HEIC', '\0\0\0\x18ftypheic\0\0\0\0', 'image/heic'],
  ['a PDF', '%PDF-1.7\n', 'application/pdf'],
])('%s is known by its first bytes', (_, text, type) => {
  expect(attachmentTypeOf(bytes(text))).toBe(type)
})

test.each([
  ['nothing', ''],
  ['a page', '<!doctype html><script>'],
  ['a drawing that can hold a program', '<svg xmlns="http://www.w3.org/2000/svg">'],
  ['a film', '\0\0\0\x18ftypisom\0\0\0\0'],
  ['a sound in the same wrapping as a WebP', 'RIFF\x24\0\0\0WAVEfmt '],
  ['a PNG whose line ends were changed on the way', '\x89PNG\n\x1a\n'],
  ['a PDF behind something else', ' %PDF-1.7'],
  ['a program', 'MZ\x90\0'],
])('%s is not taken', (_, text) => {
  expect(attachmentTypeOf(bytes(text))).toBe(null)
})
