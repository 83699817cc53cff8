import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readNumber } from './read-number.ts'

test.each([
  ['7.5', 7.5],
  ['7,5', 7.5],
  ['12', 12],
  ['.5', 0.5],
  [',5', 0.5],
  ['-3,5', -3.5],
  ['−3.5', -3.5],
  ['+4', 4],
  ['0,234', 0.234],
  ['1234,567', 1234.567],
  ['1,234.5', 1234.5],
  ['1.234,5', 1234.5],
  ['1 234,5', 1234.5],
  ['1\u202f234,5', 1234.5],
  ["1'234.5", 1234.5],
  ['1,234,567', 1234567],
  ['1.234.567', 1234567],
  ['1e4', 1e4],
  ['2,5e4', 2.5e4],
  ['10^6', 1e6],
  ['2 x 10^4', 2e4],
  ['2×10^4', 2e4],
])('%s can only be read as %d', (text, value) => {
  expect(readNumber(text)).toEqual({ value })
})

test.each(['1,234', '1.234', '12,345', '999.000'])('%s can be read two ways and is never guessed', (text) => {
  expect(readNumber(text)).toEqual({ fault: expect.stringMatching(/can be read as .* or as /) })
})

test('the decimal sign in use settles what can be read two ways', () => {
  expect(readNumber('1,234', { decimal: ',' })).toEqual({ value: 1.234 })
  expect(readNumber('1,234', { decimal: '.' })).toEqual({ value: 1234 })
  expect(readNumber('1.234', { decimal: ',' })).toEqual({ value: 1234 })
  expect(readNumber('1.234', { decimal: '.' })).toEqual({ value: 1.234 })
})

test('the decimal sign in use does not turn away what can only be read one way', () => {
  expect(readNumber('7.5', { decimal: ',' })).toEqual({ value: 7.5 })
  expect(readNumber('7,5', { decimal: '.' })).toEqual({ value: 7.5 })
})

test('a value that cannot be leaves only the other reading', () => {
  expect(readNumber('1,234', { largest: 100 })).toEqual({ value: 1.234 })
  expect(readNumber('1,234', { largest: 1234 })).toHaveProperty('fault')
})

test.each([
  '',
  ' ',
  'abc',
  'NaN',
  'Infinity',
  '1e999',
  '--5',
  '5-',
  '1,23,456',
  '1 23',
  '12 1/2',
  '1.2.3',
  '7.',
  '.',
  ',',
  '1,,2',
  '0x10',
  '1,234.567,8',
  "1'234 567",
])('"%s" is no number', (text) => {
  expect(readNumber(text)).toEqual({ fault: expect.stringContaining(`found "${text.trim()}"`) })
})

test('what a program writes is read back, to the bit', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(readNumber(String(value), { decimal: '.' })).toEqual({ value: value === 0 ? expect.closeTo(0) : value })
    }),
    { numRuns: 10_000 },
  )
})

test('a number set with thousands signs and a decimal comma is read as what it was', () => {
  const german = new Intl.NumberFormat('de-DE', { minimumFractionDigits: 2, maximumFractionDigits: 2 })
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (hundredths) => {
      expect(readNumber(german.format(hundredths / 100), { decimal: ',' })).toEqual({
        value: expect.closeTo(hundredths / 100, 6),
      })
    }),
    { numRuns: 10_000 },
  )
})
