import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normalAbove, normalQuantile } from './normal.ts'

test('half of the distribution lies above 0', () => {
  expect(normalAbove(0)).toBe(0.5)
  expect(normalQuantile(0.5)).toBe(0)
})

test('the two ways of reckoning meet where one takes over from the other', () => {
  // The density at 3 is 0.0044318: over a step of 2e-9 the probability falls by 8.9e-12.
  expect(normalAbove(3) - normalAbove(3 + 2e-9)).toBeCloseTo(8.864e-12, 14)
})

test('the quantile is the place of its probability', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (probability) => {
      expect(1 - normalAbove(normalQuantile(probability))).toBeCloseTo(probability, 13)
    }),
  )
})

test('a probability of 0 or 1 has no quantile', () => {
  expect(() => normalQuantile(0)).toThrow('probability is 0')
  expect(() => normalQuantile(1)).toThrow('probability is 1')
  expect(() => normalAbove(Number.NaN)).toThrow('z is NaN')
})
