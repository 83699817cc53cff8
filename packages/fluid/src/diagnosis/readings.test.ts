import { expect, test } from 'vitest'
import { isBeyond, middleOf } from './readings.ts'

test('a figure on its limit is inside', () => {
  expect(isBeyond(8.5, 'low', 8.5)).toBe(false)
  expect(isBeyond(8.4, 'low', 8.5)).toBe(true)
  expect(isBeyond(400, 'high', 400)).toBe(false)
  expect(isBeyond(401, 'high', 400)).toBe(true)
})

test.each([
  [{ low: 250, high: 425 }, 'high', 250, true],
  [{ low: 250, high: 425 }, 'high', 300, null],
  [{ low: 250, high: 425 }, 'high', 425, false],
  [{ low: 250, high: 425 }, 'low', 425, true],
  [{ low: 250, high: 425 }, 'low', 300, null],
  [{ low: 250, high: 425 }, 'low', 250, false],
  [{ below: 1000 }, 'high', 1000, false],
  [{ below: 1000 }, 'high', 500, null],
  [{ below: 1000 }, 'low', 1000, true],
  [{ atLeast: 1e6 }, 'high', 1e6, true],
  [{ atLeast: 1e6 }, 'high', 1e7, null],
  [{ atLeast: 1e6 }, 'low', 1e6, false],
] as const)('class %j against its %s limit of %d: %s', (value, side, limit, beyond) => {
  expect(isBeyond(value, side, limit)).toBe(beyond)
})

test('a class without two ends has no middle', () => {
  expect(middleOf({ low: 2, high: 4 })).toBe(3)
  expect(middleOf({ atLeast: 4 })).toBeNull()
  expect(middleOf(undefined)).toBeNull()
})
