import { expect, test } from 'vitest'
import { median, trimmedRmse } from './errors.ts'

test('the median of an even number is the mean of the two in the middle', () => {
  expect(median([9, 1, 5])).toBe(5)
  expect(median([4, 1, 3, 2])).toBe(2.5)
  expect(median([])).toBeNaN()
})

test('the root mean square of 3 and −4 is √12.5', () => {
  expect(trimmedRmse([3, -4])).toBeCloseTo(Math.sqrt(12.5), 12)
})

test('of a hundred errors the largest one is left out, of ninety-nine none', () => {
  const ones = (count: number) => Array<number>(count).fill(1)
  expect(trimmedRmse([...ones(99), -1000])).toBe(1)
  // (98 × 1 + 1000²) / 99 = 1000098 / 99
  expect(trimmedRmse([...ones(98), -1000])).toBeCloseTo(Math.sqrt(1_000_098 / 99), 9)
  // A quarter of four: 1, 2, 3 stay, (1 + 4 + 9) / 3.
  expect(trimmedRmse([1, 2, 3, 4], 0.25)).toBeCloseTo(Math.sqrt(14 / 3), 12)
})

test('an error that is no number is refused, not passed over', () => {
  expect(() => trimmedRmse([1, Number.NaN])).toThrow(RangeError)
})
