import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { parse } from '@formatjs/icu-messageformat-parser'
import { expect, test } from 'vitest'
import { withoutSkeletons } from './plain-messages.ts'

const file = createRequire(import.meta.url).resolve('@formatjs/icu-messageformat-parser')
const less = withoutSkeletons(readFileSync(file, 'utf8'))
const plain = (await import(`data:text/javascript,${encodeURIComponent(less)}`)) as { parse: typeof parse }

test.each([
  'Add {volume} at {strength}',
  '{count, plural, =0 {none} one {# sump} other {# sumps}}, {kind, select, lean {too lean} other {<b>fine</b>}}',
])('%s: the parser that the app gets reads a message as the whole one does', (text) => {
  expect(plain.parse(text)).toEqual(parse(text))
})

test('a skeleton is refused', () => {
  expect(() => plain.parse('{n, number, ::currency/EUR}')).toThrow('INVALID_NUMBER_SKELETON')
})

test('another parser than was looked at is not taken for this one', () => {
  expect(() => withoutSkeletons('export const parse = () => []')).toThrow(/look what of it is needed/)
})
