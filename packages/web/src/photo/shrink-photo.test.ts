import { expect, test } from 'vitest'
import { type Drawing, metadataIn, NoPhoto, shrinkPhoto, shrunkSize } from './shrink-photo.ts'

test.each([
  ['a phone’s photo, 4000 × 3000', { width: 4000, height: 3000 }, { width: 1600, height: 1200 }],
  ['one held upright', { width: 3000, height: 4000 }, { width: 1200, height: 1600 }],
  ['one on the limit', { width: 1600, height: 900 }, { width: 1600, height: 900 }],
  ['a small one stays as it is', { width: 640, height: 480 }, { width: 640, height: 480 }],
  ['one pixel beyond', { width: 1601, height: 1601 }, { width: 1600, height: 1600 }],
  ['a strip keeps a pixel of width', { width: 1, height: 10_000 }, { width: 1, height: 1600 }],
])('%s', (_, from, to) => {
  expect(shrunkSize(from)).toEqual(to)
})

const segment = (marker: number, text: string) => [0xff, marker, 0, text.length + 2, ...new TextEncoder().encode(text)]
const jpeg = (...segments: number[][]) =>
  new Uint8Array([0xff, 0xd8, ...segments.flat(), 0xff, 0xda, 0, 2, 1, 2, 3, 0xff, 0xd9])

test('where and with what a photo was taken stands in segments of its own', () => {
  const exif = segment(0xe1, 'Exif\0\0II*\0')
  expect(metadataIn(jpeg(segment(0xe0, 'JFIF\0'), exif))).toEqual([0xe1])
  expect(metadataIn(jpeg(segment(0xfe, 'a comment'), segment(0xed, 'Photoshop')))).toEqual([0xfe, 0xed])
  expect(metadataIn(jpeg(segment(0xe0, 'JFIF\0'), segment(0xdb, 'quantization')))).toEqual([])
  expect(metadataIn(new TextEncoder().encode('<svg>'))).toEqual([0])
})

const drawing = (encoded: Uint8Array<ArrayBuffer> | null): Drawing & { asked: unknown[] } => {
  const asked: unknown[] = []
  return {
    asked,
    decode: async () => ({ width: 4000, height: 3000 }),
    encode: async (_, size) => {
      asked.push(size)
      return encoded === null ? null : new Blob([encoded])
    },
  }
}

test('a photo is drawn anew at the smaller size, and only that leaves', async () => {
  const clean = jpeg(segment(0xe0, 'JFIF\0'))
  const draws = drawing(clean)
  expect(await shrinkPhoto(new Blob(['from the camera']), draws)).toEqual(clean)
  expect(draws.asked).toEqual([{ width: 1600, height: 1200 }])
})

test('a browser that leaves words in the picture sends nothing', async () => {
  await expect(shrinkPhoto(new Blob(['x']), drawing(jpeg(segment(0xe1, 'Exif'))))).rejects.toThrow(NoPhoto)
})

test('what cannot be read or drawn is said, and nothing is sent', async () => {
  await expect(shrinkPhoto(new Blob(['x']), drawing(null))).rejects.toThrow(NoPhoto)
  const unreadable = { ...drawing(null), decode: () => Promise.reject(new Error('EncodingError')) }
  await expect(shrinkPhoto(new Blob(['x']), unreadable)).rejects.toThrow(/cannot read the picture/)
})
