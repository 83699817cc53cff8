import { expect, test } from 'vitest'
import { sayChance } from './chance.ts'

test.each([
  [0.02, '1 in 20 or less'],
  [0.0749, '1 in 20 or less'],
  [0.075, '1 in 10'],
  [0.34, '3 in 10'],
  [0.5, '5 in 10'],
  [0.92, '9 in 10'],
  [0.925, '19 in 20 or more'],
])('a probability of %f is said as %s', (probability, words) => {
  expect(sayChance(probability)).toBe(words)
})
