import { expect, test } from 'vitest'
import { withoutCanonicalForm } from './whole-text.ts'

test('whole characters of any plane pass, half ones are named with their place', () => {
  expect(withoutCanonicalForm({ a: 'ä€😀\u0000', b: [1, null, true, { c: '' }] })).toEqual([])
  const expected = 'whole characters'
  const found = 'half a character'
  expect(withoutCanonicalForm({ note: '\ud83d', typed: { 'a/b': ['x', '\ude00'] }, '\ud800': 1 })).toEqual([
    { pointer: '/note', found, expected },
    { pointer: '/typed/a~1b/1', found, expected },
    { pointer: '/\ufffd', found, expected },
  ])
})

test('a number beyond all numbers and nesting without end are found too', () => {
  expect(withoutCanonicalForm(JSON.parse('{"a":[1,1e400],"b":1e308}'))).toMatchObject([{ pointer: '/a/1' }])
  const nested = (depth: number) => JSON.parse(`${'['.repeat(depth)}${']'.repeat(depth)}`) as unknown
  expect(withoutCanonicalForm(nested(100))).toEqual([])
  expect(withoutCanonicalForm(nested(101))).toHaveLength(1)
  expect(withoutCanonicalForm(nested(200_000))).toHaveLength(1)
})
