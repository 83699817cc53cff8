import { expect, test } from 'vitest'
import { meantTaps } from './meant-tap.ts'

test('the second tap of two at once does nothing where the first brought something else under the thumb', () => {
  const isMeant = meantTaps()
  expect(isMeant('mill 4, looks', 1)).toBe(true)
  expect(isMeant('mill 4, refractometer', 2)).toBe(false)
  expect(isMeant('mill 4, refractometer', 3)).toBe(false)
  expect(isMeant('mill 4, refractometer', 1)).toBe(true)
  expect(isMeant('mill 5, level', 2)).toBe(false)
})

test('a key tapped twice while the same is shown counts twice', () => {
  const isMeant = meantTaps()
  expect([1, 2, 3].map((count) => isMeant('refractometer', count))).toEqual([true, true, true])
})

test('a second tap whose first was on another page is not meant for this one', () => {
  expect(meantTaps()('mill 4, level', 2)).toBe(false)
})

test('a keyboard does not bounce: what it presses is meant', () => {
  const isMeant = meantTaps()
  expect(isMeant('level', 0)).toBe(true)
  expect(isMeant('looks', 0)).toBe(true)
})
