import { expect, test } from 'vitest'
import { median } from './median.ts'

test('the median is the middle value, or the mean of the two in the middle', () => {
  expect(median([9, 1, 5])).toBe(5)
  expect(median([9, 1, 5, 6])).toBe(5.5)
  expect(median([7])).toBe(7)
})

test('the values stay in their order', () => {
  const values = [3, 1, 2]
  median(values)
  expect(values).toEqual([3, 1, 2])
})

test('nothing has no median', () => {
  expect(() => median([])).toThrow('values is 0, expected at least 1')
})
