import { expect, test } from 'vitest'
import type { Reported } from '../estimate/events.ts'
import { germClass } from './germ-class.ts'

const classes = { reasonable: 1e4, poor: 1e6 }

test.each<[Reported, string]>([
  [9999, 'good'],
  [10_000, 'reasonable'],
  [999_999, 'reasonable'],
  [1_000_000, 'poor'],
  [{ below: 1000 }, 'good'],
  [{ low: 1000, high: 10_000 }, 'good'],
  [{ low: 10_000, high: 100_000 }, 'reasonable'],
  [{ low: 100_000, high: 1_000_000 }, 'reasonable'],
  [{ low: 100_000, high: 10_000_000 }, 'poor'],
  [{ below: 100_000 }, 'reasonable'],
  [{ atLeast: 10_000_000 }, 'poor'],
  [{ atLeast: 1000 }, 'poor'],
])('%j is %s', (count, expected) => {
  expect(germClass(count, classes)).toBe(expected)
})

test('with nothing but a highest count wanted, what is under it is not called good', () => {
  const only = { reasonable: null, poor: 1e6 }
  expect(germClass(100, only)).toBe('under-limit')
  expect(germClass(1e6, only)).toBe('poor')
  expect(() => germClass(1, { reasonable: null, poor: 0 })).toThrow('poor is 0')
})

test('bounds that do not rise are refused', () => {
  expect(() => germClass(1, { reasonable: 0, poor: 1 })).toThrow('reasonable is 0')
  expect(() => germClass(1, { reasonable: 10, poor: 1 })).toThrow('poor is 1')
})
