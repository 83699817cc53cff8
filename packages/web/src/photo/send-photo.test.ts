import { expect, test } from 'vitest'
import { photoName } from './send-photo.ts'

test('a photo is called by the SHA-256 of its bytes', () => {
  // FIPS 180-2, appendix B.1: SHA-256 of "abc".
  expect(photoName(new TextEncoder().encode('abc'))).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  )
})
