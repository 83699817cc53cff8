import { expect, test } from 'vitest'
import { type DecimalSign, noDecimals, settleDecimals, signSaid, weighDecimal } from './decimals.ts'

test.each([
  ['7,5', ','],
  ['7.5', '.'],
  ['0,125', ','],
  ['1234,567', ','],
  ['1.234,5', ','],
  ['1,234.5', '.'],
  ['1.234.567', ','],
  ['1,234,567', '.'],
  ['12,3456', ','],
  ['75', 'none'],
  ['1,234', 'either'],
  ['1.234', 'either'],
] as const)('%s says of the decimal sign: %s', (text, expected) => {
  expect(signSaid(text)).toBe(expected)
})

function settled(texts: string[], told?: DecimalSign, delimiter: string | null = ',') {
  const evidence = noDecimals()
  for (const text of texts) weighDecimal(evidence, text)
  return settleDecimals(evidence, { told, delimiter })
}

test('one number that can be read one way only settles all the others', () => {
  expect(settled(['1,234', '7,5']).rule.sign).toBe(',')
  expect(settled(['1,234', '7.5 gal']).rule.sign).toBe('.')
})

test('semicolons between the cells go with a decimal comma', () => {
  expect(settled(['1,234'], undefined, ';').rule.sign).toBe(',')
})

test('a semicolon does not make a point the sign of thousands', () => {
  expect(settled(['1.234'], undefined, ';').question?.pointer).toBe('/decimal')
})

test('numbers that may all be either are asked about', () => {
  const { rule, question } = settled(['1,234', '12'])
  expect(rule.sign).toBeNull()
  expect(question).toMatchObject({ pointer: '/decimal', choices: [',', '.'] })
  expect(question?.question).toContain('1234 or 1.234')
})

test('whole numbers need no sign', () => {
  expect(settled(['12', '7'])).toEqual({ rule: { sign: null, strict: false }, question: null, warning: null })
})

test('both signs in one sheet are told, and asked about where a number may be either', () => {
  expect(settled(['7,5', '7.5']).warning).toContain('Both')
  expect(settled(['7,5', '7.5', '1,234']).question?.pointer).toBe('/decimal')
})

test('what a person says is strict', () => {
  expect(settled(['7,5'], '.').rule).toEqual({ sign: '.', strict: true })
})
