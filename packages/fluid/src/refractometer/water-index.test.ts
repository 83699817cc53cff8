import { expect, test } from 'vitest'
import { waterIndex } from './water-index.ts'

test('water bends light less the warmer it is', () => {
  expect(waterIndex(10)).toBeGreaterThan(waterIndex(20))
  expect(waterIndex(20)).toBeGreaterThan(waterIndex(30))
})

test('a temperature at which water is not liquid is refused', () => {
  expect(() => waterIndex(-1)).toThrow('temperature is -1')
  expect(() => waterIndex(101)).toThrow('temperature is 101')
})
