import fc from 'fast-check'
import { expect, test } from 'vitest'
import { litresFrom, litresTo, type VolumeUnit, volumeUnits } from './volume.ts'

test.each([
  ['L', 1],
  ['mL', 0.001],
  ['m3', 1000],
  // 231 cubic inches of 25.4 mm
  ['us-gal', (231 * 25.4 ** 3) / 1e6],
  ['imp-gal', 4.54609],
  // four quarts and 128 fluid ounces to the US gallon
  ['us-qt', 3.785411784 / 4],
  ['us-fl-oz', 3.785411784 / 128],
] as const)('one %s is %d litres', (unit, litres) => {
  expect(litresFrom(1, unit)).toBeCloseTo(litres, 12)
})

test('a volume comes back from every unit as it went in', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), fc.constantFrom(...volumeUnits), (litres, unit) => {
      expect(Math.abs(litresFrom(litresTo(litres, unit), unit) - litres)).toBeLessThanOrEqual(1e-12 * Math.abs(litres))
    }),
    { numRuns: 10_000 },
  )
})

test('a unit that is not on the list is refused by name', () => {
  expect(() => litresFrom(1, 'gal' as VolumeUnit)).toThrow('unit of volume is gal, expected one of L, mL')
  expect(() => litresTo(1, 'toString' as VolumeUnit)).toThrow('unit of volume is toString')
})

test('a volume that is no number is refused', () => {
  expect(() => litresFrom(Number.NaN, 'L')).toThrow('volume is NaN')
  expect(() => litresTo(Number.POSITIVE_INFINITY, 'L')).toThrow('volume is Infinity')
})
