import readCode from 'jsqr'
import { encode } from 'uqr'
import { expect, test } from 'vitest'
import { qrPath } from './qr-path.ts'

/** Draws a path of unit squares as pixels, eight a module, as a camera might see it. */
function pixelsOf({ size, path }: { size: number; path: string }): { pixels: Uint8ClampedArray; width: number } {
  const width = 8 * size
  const pixels = new Uint8ClampedArray(4 * width * width).fill(255)
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)/g)) {
    for (let row = 0; row < 8; row++)
      for (let column = 0; column < 8; column++) {
        const at = 4 * ((8 * Number(y) + row) * width + 8 * Number(x) + column)
        pixels.set([0, 0, 0], at)
      }
  }
  return { pixels, width }
}

test.each([
  'http://192.168.1.20:8090/round/mill-7',
  `https://coolant.shop.example/round/${encodeURIComponent('Fräse 7 / links')}`,
])('a reader of codes reads %s off what is drawn', (address) => {
  const { pixels, width } = pixelsOf(qrPath(address))
  expect(readCode(pixels, width, width)?.data).toBe(address)
})

test('four modules around the code stay white, as the standard asks', () => {
  const { size, path } = qrPath('x')
  const places = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)])
  expect(Math.min(...places)).toBe(4)
  expect(Math.max(...places)).toBe(size - 5)
  expect(size).toBe(encode('x', { ecc: 'Q', border: 0 }).size + 8)
})
