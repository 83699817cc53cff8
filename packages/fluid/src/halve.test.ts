import { expect, test } from 'vitest'
import { halve } from './halve.ts'

test('the place is found to the last bit', () => {
  expect(halve(0, 2, (x) => x * x < 2)).toBe(Math.SQRT2)
})

test('where nothing lies below, it is the low end', () => {
  expect(halve(3, 5, () => false)).toBe(3)
})

test('where all lies below, it is the high end', () => {
  expect(halve(3, 5, () => true)).toBe(5)
})
