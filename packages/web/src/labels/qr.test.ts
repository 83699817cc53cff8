import { encode } from 'uqr'
import { expect, test } from 'vitest'
import { readCode } from '../round/read-code.ts'
import { qrPath } from './qr-path.ts'

/** Draws a path of unit squares as pixels, eight a module, as a camera might see it. */
function pictureOf({ size, path }: { size: number; path: string }) {
  const width = 8 * size
  const data = new Uint8ClampedArray(4 * width * width).fill(255)
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)/g)) {
    for (let row = 0; row < 8; row++)
      for (let column = 0; column < 8; column++) {
        const at = 4 * ((8 * Number(y) + row) * width + 8 * Number(x) + column)
        data.set([0, 0, 0], at)
      }
  }
  return { data, width, height: width }
}

test.each([
  'http://192.168.1.20:8090/round/mill-7',
  `https://coolant.shop.example/round/${encodeURIComponent('Fräse 7 / links')}`,
])('a reader of codes reads %s off what is drawn', (address) => {
  expect(readCode(pictureOf(qrPath(address)), 1000)).toBe(address)
})

test('a label that is held askew, in poor light and unsteady, is read', () => {
  const address = 'http://192.168.1.20:8090/round/mill-7'
  const flat = pictureOf(qrPath(address))
  const width = Math.round(1.6 * flat.width)
  const [sine, cosine] = [Math.sin(0.35), Math.cos(0.35)]
  const data = new Uint8ClampedArray(4 * width * width)
  let seed = 7
  for (let y = 0; y < width; y++)
    for (let x = 0; x < width; x++) {
      const [dx, dy] = [x - width / 2, y - width / 2]
      const column = Math.round(flat.width / 2 + cosine * dx + sine * dy)
      const row = Math.round(flat.width / 2 - sine * dx + cosine * dy)
      const isOn = column >= 0 && row >= 0 && column < flat.width && row < flat.width
      const light = isOn ? flat.data[4 * (row * flat.width + column)]! : 200
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648
      // Half as bright at the right edge, with noise of a fifth.
      const seen = (40 + 0.55 * light) * (1 - (0.5 * x) / width) + 40 * (seed / 2_147_483_648 - 0.5)
      data.set([seen, seen, seen, 255], 4 * (y * width + x))
    }
  expect(readCode({ data, width, height: width }, 1000)).toBe(address)
})

test('a picture without a code has none', () => {
  const data = new Uint8ClampedArray(4 * 200 * 200).fill(180)
  expect(readCode({ data, width: 200, height: 200 }, 100)).toBeNull()
})

test('four modules around the code stay white, as the standard asks', () => {
  const { size, path } = qrPath('x')
  const places = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)])
  expect(Math.min(...places)).toBe(4)
  expect(Math.max(...places)).toBe(size - 5)
  expect(size).toBe(encode('x', { ecc: 'Q', border: 0 }).size + 8)
})
