import fc from 'fast-check'
import { expect, test } from 'vitest'
import { guarded, unguarded } from './formula-guard.ts'

test.each(['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\tx', '\rx', '=', '-', "'=1", '--1', '-1.2.3', '- 5', '-5 L'])(
  'what could be run gets an apostrophe: %j',
  (text) => {
    expect(guarded(text)).toBe(`'${text}`)
  },
)

test.each(['-5', '-5.25', '-5,25', '+3', '-1e-7', '-.5', '5-3', 'a=b', "it's", "'quoted'", ''])(
  'a plain number and plain words stay as they are: %j',
  (text) => {
    expect(guarded(text)).toBe(text)
  },
)

test('a guarded text comes back as it was', () => {
  const signs = fc.constantFrom('=', '+', '-', '@', '\t', '\r', "'", '1', '5', '.', ',', 'e', ' ', 'x')
  const text = fc.string({ unit: signs, maxLength: 6 })
  fc.assert(fc.property(text, (original) => unguarded(guarded(original)) === original))
})
