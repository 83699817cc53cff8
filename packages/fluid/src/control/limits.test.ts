import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type HardLimits, limitCourse } from './limits.ts'

const ph: HardLimits = { low: 8.5, high: 9.5, hysteresis: 0.2 }

test('a value on a limit is inside, one beyond it is an alarm', () => {
  expect(limitCourse([8.5, 9.5], ph)).toEqual({ states: ['inside', 'inside'], signals: [] })
  expect(limitCourse([8.49], ph)).toEqual({ states: ['low'], signals: [{ index: 0, rule: 'lower' }] })
  expect(limitCourse([9.51], ph).signals).toEqual([{ index: 0, rule: 'upper' }])
})

test('an alarm ends only well inside, and begins anew after that', () => {
  expect(limitCourse([8.4, 8.6, 8.4, 8.7, 8.4], ph)).toEqual({
    states: ['low', 'low', 'low', 'inside', 'low'],
    signals: [
      { index: 0, rule: 'lower' },
      { index: 4, rule: 'lower' },
    ],
  })
  expect(limitCourse([9.6, 9.4, 9.3], ph).states).toEqual(['high', 'high', 'inside'])
})

test('from one limit straight to the other is a new alarm', () => {
  expect(limitCourse([8.4, 9.6], ph).signals).toHaveLength(2)
})

test('without hysteresis the alarm ends at the limit', () => {
  expect(limitCourse([7.9, 8.5, 7.9], { low: 8.5, hysteresis: 0 }).states).toEqual(['low', 'inside', 'low'])
})

test('one limit is enough', () => {
  expect(limitCourse([1, 1e9], { high: 1e6, hysteresis: 0 }).states).toEqual(['inside', 'high'])
})

test.each<[string, HardLimits]>([
  ['low is NaN', { hysteresis: 0 }],
  ['high is 8, expected at least 9', { low: 9, high: 8, hysteresis: 0 }],
  ['hysteresis is -0.1', { low: 9, hysteresis: -0.1 }],
  ['hysteresis is 2, expected at least 0 and at most 1', { low: 8, high: 9, hysteresis: 2 }],
])('%s is refused', (message, limits) => {
  expect(() => limitCourse([], limits)).toThrow(message)
})

test('a wider hysteresis never raises more alarms', () => {
  const values = fc.array(fc.double({ min: 7, max: 11, noNaN: true }))
  const width = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(values, width, width, (values, a, b) => {
      const count = (hysteresis: number) => limitCourse(values, { ...ph, hysteresis }).signals.length
      expect(count(Math.max(a, b))).toBeLessThanOrEqual(count(Math.min(a, b)))
    }),
  )
})
