/**
 * Units of water hardness, and hardness from a water analysis.
 *
 * Units: computed here from their definitions (1 °dH is 10 mg CaO, 1 °fH 10 mg CaCO3 a litre; a grain of CaCO3 to the US gallon and, English
 * degree, to the imperial gallon; CaCO3 100.09, CaO 56.08 g/mol). Tolerance: half of the last digit given.
 * From calcium and magnesium: Standard Methods for the Examination of Water and Wastewater, 2340 B, formula read in a copy of the source;
 * tolerance 0.05, what its rounded coefficients leave.
 */
import { expect, test } from 'vitest'
import { hardnessFrom, hardnessFromMetals, hardnessInAll } from '../packages/fluid/src/index.ts'

test.each([
  ['dH', 17.848, 3],
  ['clark', 14.254, 3],
  ['fH', 10, 12],
  ['gpg', 17.118, 3],
  ['mmol/L', 100.09, 2],
] as const)('one %s is %d ppm', (unit, ppm, digits) => {
  expect(hardnessFrom(1, unit)).toBeCloseTo(ppm, digits)
})

test('100 ppm are 5.603 °dH, 7.016 English degrees, 10 °fH, 5.842 grains per US gallon and 0.9991 mmol/L', () => {
  expect(hardnessInAll(100, 'ppm')).toEqual({
    ppm: 100,
    dH: expect.closeTo(5.603, 3),
    clark: expect.closeTo(7.016, 3),
    fH: expect.closeTo(10, 12),
    gpg: expect.closeTo(5.842, 3),
    'mmol/L': expect.closeTo(0.9991, 4),
  })
})

test('50 mg/L of calcium and 10 mg/L of magnesium are a hardness of 166.03', () => {
  expect(Math.abs(hardnessFromMetals({ calcium: 50, magnesium: 10 }) - 166.03)).toBeLessThanOrEqual(0.05)
})
