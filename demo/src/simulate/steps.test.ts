import { expect, test } from 'vitest'
import { toStep, typedNumber } from './steps.ts'

test.each([
  [3.32, 0.2, 3.4],
  [3.28, 0.2, 3.2],
  [0.29, 0.1, 0.3],
  [167, 5, 165],
])('%d on a scale of steps of %d is read as %d', (value, step, read) => expect(toStep(value, step)).toBe(read))

test('numbers are typed with a decimal comma', () => expect(typedNumber(3.4)).toBe('3,4'))
