import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type LengthUnit, lengthUnits, millimetresFrom, millimetresTo } from './length.ts'

test.each([
  ['mm', 1],
  ['cm', 10],
  ['m', 1000],
  ['in', 25.4],
  ['ft', 304.8],
] as const)('one %s is %d millimetres', (unit, millimetres) => {
  expect(millimetresFrom(1, unit)).toBe(millimetres)
  expect(millimetresTo(millimetres, unit)).toBe(1)
})

test('a length comes back from every unit as it went in', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), fc.constantFrom(...lengthUnits), (mm, unit) => {
      expect(Math.abs(millimetresFrom(millimetresTo(mm, unit), unit) - mm)).toBeLessThanOrEqual(1e-12 * Math.abs(mm))
    }),
    { numRuns: 10_000 },
  )
})

test('a unit that is not on the list is refused by name', () => {
  expect(() => millimetresFrom(1, 'yd' as LengthUnit)).toThrow('unit of length is yd')
})
