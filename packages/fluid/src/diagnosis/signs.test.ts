import { expect, test } from 'vitest'
import { readSigns, signCalled, signFamilies, signs } from './signs.ts'

test('every word means one sign', () => {
  const words = signs.flatMap((sign) => [sign.id, ...('also' in sign ? sign.also : [])])
  expect(words.filter((word, n) => words.indexOf(word) !== n)).toEqual([])
  expect(words.filter((word) => word !== word.trim().toLowerCase() && !signs.some(({ id }) => id === word))).toEqual([])
  for (const { id } of signs) expect(signCalled(id)).toBe(id)
})

test('the list has at least thirty-five signs, of every family', () => {
  expect(signs.length).toBeGreaterThanOrEqual(35)
  expect(new Set(signs.map(({ family }) => family))).toEqual(new Set(Object.keys(signFamilies)))
})

test('a word that the list has not is named, never guessed', () => {
  expect(readSigns([' Foam', 'foam', 'rust', 'smells of Monday'])).toEqual({
    signs: ['foam', 'rust on parts'],
    notUnderstood: ['smells of Monday'],
  })
})
