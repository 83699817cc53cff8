import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  type HardnessUnit,
  hardnessFrom,
  hardnessFromMetals,
  hardnessInAll,
  hardnessTo,
  hardnessUnits,
} from './hardness.ts'

test('one French degree is ten ppm', () => {
  expect(hardnessFrom(1, 'fH')).toBe(10)
})

test('a grain per US gallon is 64.79891 mg in 3.785411784 L', () => {
  expect(hardnessFrom(1, 'gpg')).toBeCloseTo(17.118, 3)
})

test('all units of one hardness say the same water', () => {
  const all = hardnessInAll(15, 'gpg')
  expect(all.gpg).toBeCloseTo(15, 12)
  for (const unit of hardnessUnits) expect(hardnessFrom(all[unit], unit)).toBeCloseTo(all.ppm, 10)
})

test('a hardness comes back from every unit as it went in', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e5, noNaN: true }), fc.constantFrom(...hardnessUnits), (ppm, unit) => {
      expect(Math.abs(hardnessFrom(hardnessTo(ppm, unit), unit) - ppm)).toBeLessThanOrEqual(1e-12 * ppm)
    }),
    { numRuns: 10_000 },
  )
})

test('calcium and magnesium make the hardness of a water', () => {
  // 2.497 × 40 + 4.118 × 0 and 2.497 × 0 + 4.118 × 10
  expect(hardnessFromMetals({ calcium: 40, magnesium: 0 })).toBeCloseTo(99.88, 10)
  expect(hardnessFromMetals({ calcium: 0, magnesium: 10 })).toBeCloseTo(41.18, 10)
})

test('a hardness below nothing is refused', () => {
  expect(() => hardnessInAll(-1, 'ppm')).toThrow('value is -1, expected at least 0')
  expect(() => hardnessFromMetals({ calcium: -1, magnesium: 0 })).toThrow('calcium is -1')
  expect(() => hardnessFromMetals({ calcium: 1, magnesium: Number.NaN })).toThrow('magnesium is NaN')
})

test('a unit that is not on the list is refused by name', () => {
  expect(() => hardnessFrom(1, 'degrees' as HardnessUnit)).toThrow('unit of hardness is degrees')
})
