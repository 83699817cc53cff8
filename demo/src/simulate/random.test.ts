import { expect, test } from 'vitest'
import { fnv1a, randomOf, starStar } from './random.ts'

test('xoshiro128** gives the first numbers of its published sequence', () => {
  // State 0x964D4A0C … from a test ROM checked against the authors' C code (xoshiro-6502, test-rom/testdata.asm).
  const bits = starStar([0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0])
  expect([bits(), bits(), bits(), bits()]).toEqual([0xf1391922, 0x6fe53806, 0xa5be2840, 0xf510ee70])
})

test('xoshiro128** from state 1, 2, 3, 4 begins as by hand', () => {
  // rotl(2 × 5, 7) × 9 = 1280 × 9 = 11520; then b = 2 ^ (3 ^ 1) = 0, so the second output is 0.
  const bits = starStar([1, 2, 3, 4])
  expect([bits(), bits()]).toEqual([11520, 0])
})

test('FNV-1a gives its published hashes', () => {
  // Test vectors of the FNV reference code: "" 811c9dc5, "a" e40c292c, "foobar" bf9cf968.
  expect(['', 'a', 'foobar'].map(fnv1a)).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968])
})

test('a name has a stream of its own, the same each time', () => {
  const draws = (seed: number, name: string) => Array.from({ length: 5 }, randomOf(seed, name).bits)
  expect(draws(1, 'mill')).toEqual(draws(1, 'mill'))
  expect(draws(1, 'mill')).not.toEqual(draws(1, 'saw'))
  expect(draws(1, 'mill')).not.toEqual(draws(2, 'mill'))
})

test('normal draws have the mean and the standard deviation asked for', () => {
  const { normal } = randomOf(1, 'normal')
  const n = 20_000
  const draws = Array.from({ length: n }, () => normal(2))
  const mean = draws.reduce((sum, x) => sum + x, 0) / n
  const sd = Math.sqrt(draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / n)
  // Standard errors: 2/√20000 = 0.014 of the mean, 2/√40000 = 0.010 of the sd; five of them.
  expect(Math.abs(mean)).toBeLessThan(0.07)
  expect(Math.abs(sd - 2)).toBeLessThan(0.05)
})
