import { expect, test } from 'vitest'
import { halfCharacters } from './whole-text.ts'

test('whole characters of any plane pass, half ones are named with their place', () => {
  expect(halfCharacters({ a: 'ä€😀\u0000', b: [1, null, true, { c: '' }] })).toEqual([])
  const expected = 'whole characters'
  const found = 'half a character'
  expect(halfCharacters({ note: '\ud83d', typed: { 'a/b': ['x', '\ude00'] }, '\ud800': 1 })).toEqual([
    { pointer: '/note', found, expected },
    { pointer: '/typed/a~1b/1', found, expected },
    { pointer: '/\ufffd', found, expected },
  ])
})
