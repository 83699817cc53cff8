import fc from 'fast-check'
import { expect, test } from 'vitest'
import { commonStrength, holdingStrength } from './holding-strength.ts'

test('what holds the target is the target times carry-off over all that is lost', () => {
  expect(holdingStrength({ target: 8, evaporation: 3, carryOff: 1 })).toBe(2)
  expect(holdingStrength({ target: 8, evaporation: 0, carryOff: 1 })).toBe(8)
})

test('a sump that loses nothing with its chips is held by no strength', () => {
  expect(() => holdingStrength({ target: 8, evaporation: 3, carryOff: 0 })).toThrow(/carryOff/)
  expect(() => holdingStrength({ target: 8, evaporation: -1, carryOff: 1 })).toThrow(/evaporation/)
})

test('one strength for two sumps lies between theirs, nearer the one that it moves more', () => {
  // Cycles 4 and 2, targets 8 both: alone 2 and 4 %. x = (4 · 8 + 2 · 8) / (16 + 4) = 2.4; ends 9.6 and 4.8.
  const { strength, ends } = commonStrength([
    { target: 8, evaporation: 3, carryOff: 1 },
    { target: 8, evaporation: 1, carryOff: 1 },
  ])
  expect(strength).toBeCloseTo(2.4, 12)
  expect(ends).toEqual([expect.closeTo(9.6, 12), expect.closeTo(4.8, 12)])
})

test('for one sump, or for equals, the common strength is its own', () => {
  const sump = { target: 6, evaporation: 2, carryOff: 1 }
  expect(commonStrength([sump]).strength).toBeCloseTo(holdingStrength(sump), 12)
  expect(commonStrength([sump, sump]).ends).toEqual([expect.closeTo(6, 12), expect.closeTo(6, 12)])
})

test('no other strength ends nearer all targets', () => {
  const rate = fc.double({ min: 0.1, max: 10, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(fc.record({ target: rate, evaporation: rate, carryOff: rate }), { minLength: 1, maxLength: 8 }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (sumps, by) => {
        const { strength, ends } = commonStrength(sumps)
        const miss = (x: number) =>
          sumps.reduce((sum, { target, evaporation: e, carryOff: d }) => sum + ((x * (e + d)) / d - target) ** 2, 0)
        expect(ends.reduce((sum, end, i) => sum + (end - sumps[i]!.target) ** 2, 0)).toBeCloseTo(miss(strength), 6)
        expect(miss(strength)).toBeLessThanOrEqual(miss(strength + by) + 1e-9)
      },
    ),
  )
})

test('no sumps have no strength in common', () => {
  expect(() => commonStrength([])).toThrow(/sumps/)
})
