import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { emptySeal, sealed, unsealed } from './seals.ts'

const sha = (text: string) => BigInt(`0x${createHash('sha256').update(text).digest('hex')}`)

test('a seal is the sum of its rows’ SHA-256, modulo 2^256, in 64 digits', () => {
  const sum = (sha('a') + sha('b') + sha('c')) % 2n ** 256n
  expect(sealed(emptySeal, ['a', 'b', 'c'])).toBe(sum.toString(16).padStart(64, '0'))
  expect(sealed(emptySeal, [])).toBe('0'.repeat(64))
})

test('the order of the rows and the writes they came in does not matter', () => {
  const whole = sealed(emptySeal, ['a', 'b', 'c'])
  expect(sealed(sealed(emptySeal, ['c']), ['b', 'a'])).toBe(whole)
})

test('a row more, less, twice or other is another seal', () => {
  const seals = [['a', 'b'], ['a'], ['a', 'b', 'b'], ['a', 'c'], ['ab']].map((rows) => sealed(emptySeal, rows))
  expect(new Set(seals).size).toBe(seals.length)
})

test('what is taken out of a seal is as if it had never been in it', () => {
  expect(unsealed(sealed(emptySeal, ['a', 'b']), 'b')).toBe(sealed(emptySeal, ['a']))
  expect(unsealed(sealed(emptySeal, ['a']), 'a')).toBe(emptySeal)
})
