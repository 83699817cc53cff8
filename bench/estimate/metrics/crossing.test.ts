import { expect, test } from 'vitest'
import { crossingError, firstCrossing } from './crossing.ts'

const band = { low: 6, high: 9 }

test('a course crosses on the straight line between two days', () => {
  // From 8 to 10 in a day, 9 is half way: day 1.5.
  expect(firstCrossing([7, 8, 10], band)).toBeCloseTo(1.5, 12)
  // From 7 to 5 in a day, 6 is half way: day 0.5.
  expect(firstCrossing([7, 5], band)).toBeCloseTo(0.5, 12)
})

test('on the limit is inside', () => {
  expect(firstCrossing([8, 9, 9], band)).toBeNull()
  expect(firstCrossing([9, 9.1], band)).toBe(0)
})

test('what is outside from the beginning crosses nothing', () => {
  expect(firstCrossing([9.5, 8, 10], band)).toBeNull()
  expect(firstCrossing([], band)).toBeNull()
})

test('a crossing not called, or called beyond, counts as called at the horizon', () => {
  expect(crossingError(5, 3)).toBe(2)
  expect(crossingError(null, 20, 28)).toBe(8)
  expect(crossingError(90, 20, 28)).toBe(8)
})
