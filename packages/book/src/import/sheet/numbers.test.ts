import { expect, test } from 'vitest'
import { readNumber } from './numbers.ts'

const comma = { sign: ',', strict: false } as const
const point = { sign: '.', strict: false } as const

test.each([
  ['7,5', comma, 7.5, ''],
  ['7.5', comma, 7.5, ''],
  ['1.234', comma, 1234, ''],
  ['1.234', point, 1.234, ''],
  ['1,234', point, 1234, ''],
  ["1'234,5", comma, 1234.5, ''],
  ['1 234,5', comma, 1234.5, ''],
  ['60 gal', point, 60, 'gal'],
  ['3,4°Bx', comma, 3.4, '°Bx'],
  ['-5', point, -5, ''],
  ['− 5', point, -5, ''],
  ['.5', point, 0.5, ''],
  ['1e5', point, 100000, ''],
  ['1,5E5', comma, 150000, ''],
  ['10^5', point, 100000, ''],
  ['10⁵ CFU/mL', point, 100000, 'CFU/mL'],
  ['5×10³', point, 5000, ''],
  ['5 x 10^3', point, 5000, ''],
] as const)('reads %s', (text, rule, value, rest) => {
  expect(readNumber(text, rule)).toEqual({ value, rest })
})

test.each(['about 3', '', 'x', '05.10.2026', '3.4.5', '1,23,4', '.', '12 34'])('"%s" begins with no number', (text) => {
  expect(readNumber(text, point)).toBeNull()
})

test('a number with the other sign is refused where a person said which sign it is', () => {
  expect(readNumber('7,5', { sign: '.', strict: true })).toBeNull()
  expect(readNumber('1,234', { sign: '.', strict: true })).toEqual({ value: 1234, rest: '' })
})

test('a number that may be either is refused while nothing settles it', () => {
  expect(readNumber('1,234', { sign: null, strict: false })).toBeNull()
})
