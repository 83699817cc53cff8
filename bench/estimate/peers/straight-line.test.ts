import { expect, test } from 'vitest'
import { fitLine } from './straight-line.ts'

test('the line through the textbook five has slope 0.6 and height 2.2', () => {
  // x 1…5, y 2 4 5 4 5: means 3 and 4, Sxx 10, Sxy = 4+0+0+0+2 = 6, slope 0.6, at 0: 4 − 1.8 = 2.2.
  const line = fitLine(
    [2, 4, 5, 4, 5].map((y, i) => ({ x: i + 1, y })),
    2,
  )
  expect(line.slope).toBeCloseTo(0.6, 12)
  expect(line.at(0)).toBeCloseTo(2.2, 12)
  // At the mean 2 × √(1/5), at 8 2 × √(1/5 + 25/10).
  expect(line.sd(3)).toBeCloseTo(2 * Math.sqrt(0.2), 12)
  expect(line.sd(8)).toBeCloseTo(2 * Math.sqrt(2.7), 12)
})

test('one place makes no line', () => {
  expect(() => fitLine([{ x: 1, y: 1 }], 1)).toThrow(RangeError)
})
