import { unzipSync, zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { unpackedSize } from './unpacked-size.ts'

const archive = zipSync({ 'a.xml': new Uint8Array(3_000_000), 'b.xml': new Uint8Array(2_000_000) })

test('an archive’s size is that of all its parts, unpacked', () => {
  expect(archive.length).toBeLessThan(20_000)
  expect(unpackedSize(archive)).toBe(5_000_000)
})

test('an archive that claims less than it holds does not get more room than it claims', () => {
  const lying = Uint8Array.from(archive)
  const directory = Buffer.from(lying).indexOf('PK\x01\x02', 0, 'latin1')
  // Uncompressed size in the central directory: APPNOTE 4.3.12, 24 bytes from the header's beginning.
  lying.set([16, 0, 0, 0], directory + 24)
  expect(unpackedSize(lying)).toBe(2_000_016)
  let unpacked = 0
  try {
    unpacked = unzipSync(lying)['a.xml']!.length
  } catch {
    // Refusing it is as good.
  }
  expect(unpacked).toBeLessThanOrEqual(16)
})

test('what is no archive has no size', () => {
  expect(unpackedSize(new TextEncoder().encode('PK\x03\x04 and nothing more'))).toBe(null)
  expect(unpackedSize(archive.subarray(0, archive.length / 2))).toBe(null)
})
