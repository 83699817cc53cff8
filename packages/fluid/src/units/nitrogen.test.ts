import { expect, test } from 'vitest'
import { nitrateFromNitrogen, nitriteFromNitrogen } from './nitrogen.ts'

test('nitrate is more than the nitrogen in it, by its three oxygens', () => {
  // (14.007 + 3 × 15.999) / 14.007 = 4.4266
  expect(nitrateFromNitrogen(1)).toBeCloseTo(4.4266, 4)
})

test('nitrite is more than the nitrogen in it, by its two oxygens', () => {
  // (14.007 + 2 × 15.999) / 14.007 = 3.2844
  expect(nitriteFromNitrogen(1)).toBeCloseTo(3.2844, 4)
})

test('an amount below nothing is refused', () => {
  expect(() => nitrateFromNitrogen(-1)).toThrow('value is -1')
  expect(() => nitriteFromNitrogen(Number.NaN)).toThrow('value is NaN')
})
