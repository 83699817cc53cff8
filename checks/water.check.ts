/**
 * Waters: the hardness a first fill wants, laboratory hard water, softening, nitrogen on strips, blending for nitrate.
 *
 * First-fill hardness: IFA lexicon of cooling lubricants, read in a copy; tolerance 0.5 ppm, its whole numbers. Hard test water: ASTM D4627, read in a
 * copy: 29.4 g/L of CaCl2·2H2O are "20,000 ppm", rounded there; the calcium in it follows from the molar masses 40.078 and 147.01; tolerance 0.1 %.
 * Softening: 1000 grains at 123 mg/L are 526.8 L, computed here from the definition of the grain (published rounded as 528, read). Nitrogen: 50 mg/L of
 * NO3 are 11.30 mg/L of nitrogen, 20 mg/L of NO2 are 6.09, computed here from atomic weights; tolerance: half of the last digit given. Blending: computed here, for
 * the 50 mg/L of nitrate that TRGS 611 allows in make-up water (read in a copy).
 */
import { expect, test } from 'vitest'
import {
  alligation,
  hardnessFrom,
  hardnessFromMetals,
  litresFrom,
  nitrateFromNitrogen,
  nitriteFromNitrogen,
} from '../packages/fluid/src/index.ts'

test('10 to 20 °dH, the hardness for a first fill, are 178 to 357 ppm', () => {
  expect(Math.round(hardnessFrom(10, 'dH'))).toBe(178)
  expect(Math.round(hardnessFrom(20, 'dH'))).toBe(357)
})

test('the stock solution of ASTM D4627 has a hardness of 20,000 ppm, and half a percent of it 100', () => {
  const calcium = (29_400 * 40.078) / 147.01
  const stock = hardnessFromMetals({ calcium, magnesium: 0 })
  expect(Math.abs(stock / 20_000 - 1)).toBeLessThan(0.001)
  expect(Math.abs((stock * 0.5) / 100 / 100 - 1)).toBeLessThan(0.001)
})

test('a cartridge for 1000 grains softens 526.8 L of water of 123 mg/L', () => {
  // Published rounded as 528 L; computed here: 1000 × 64.79891 mg / 123 mg/L. A grain is a gpg times a US gallon.
  const grain = hardnessFrom(1, 'gpg') * litresFrom(1, 'us-gal')
  expect((1000 * grain) / 123).toBeCloseTo(526.8, 1)
})

test('50 mg/L of nitrate are 11.30 mg/L of nitrate nitrogen', () => {
  // The nitrogen is given to 0.005 mg/L: 0.005 × 4.43 = 0.022 mg/L of nitrate.
  expect(Math.abs(nitrateFromNitrogen(11.3) - 50)).toBeLessThan(0.0222)
})

test('20 mg/L of nitrite are 6.09 mg/L of nitrite nitrogen', () => {
  expect(Math.abs(nitriteFromNitrogen(6.09) - 20)).toBeLessThan(0.0165)
})

test('tap water of 70 mg/L nitrate needs 28.6 percent demineralised water to come to 50', () => {
  // Computed here: 1 − 50/70 = 0.2857. Any amounts in the same unit blend like strengths do.
  const mix = alligation({ first: 0, second: 70, wanted: 50 })
  expect(mix).toMatchObject({ first: expect.closeTo(0.286, 3) })
})
