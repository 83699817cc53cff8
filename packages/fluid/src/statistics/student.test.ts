import fc from 'fast-check'
import { expect, test } from 'vitest'
import { studentBelow, studentQuantile } from './student.ts'

test('half of the distribution lies below 0', () => {
  expect(studentBelow({ t: 0, degreesOfFreedom: 5 })).toBe(0.5)
  expect(studentQuantile({ probability: 0.5, degreesOfFreedom: 5 })).toBe(0)
})

test('what lies below −t lies above t', () => {
  expect(studentBelow({ t: -2, degreesOfFreedom: 6 })).toBeCloseTo(1 - studentBelow({ t: 2, degreesOfFreedom: 6 }), 15)
  expect(studentQuantile({ probability: 0.05, degreesOfFreedom: 6 })).toBe(
    -studentQuantile({ probability: 0.95, degreesOfFreedom: 6 }),
  )
})

test('the quantile is the place of its probability', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.0005, max: 0.9995, noNaN: true }),
      fc.integer({ min: 1, max: 300 }),
      (probability, degreesOfFreedom) => {
        const t = studentQuantile({ probability, degreesOfFreedom })
        expect(studentBelow({ t, degreesOfFreedom })).toBeCloseTo(probability, 12)
      },
    ),
  )
})

test.each([
  ['probability is 1', { probability: 1, degreesOfFreedom: 3 }],
  ['probability is NaN', { probability: Number.NaN, degreesOfFreedom: 3 }],
  ['degreesOfFreedom is 0, expected at least 1', { probability: 0.9, degreesOfFreedom: 0 }],
  ['degreesOfFreedom is 2.5, expected a whole number', { probability: 0.9, degreesOfFreedom: 2.5 }],
])('%s is refused', (message, share) => {
  expect(() => studentQuantile(share)).toThrow(message)
})
