import fc from 'fast-check'
import { expect, test } from 'vitest'
import { percentFromOneIn, percentFromWaterParts, volumePercentFromMass, waterPartsFromPercent } from './strength.ts'

test('1 : 19 is 1 part concentrate in 20 parts of mix, 5 percent', () => {
  expect(percentFromWaterParts(19)).toBe(5)
  expect(waterPartsFromPercent(5)).toBe(19)
})

test('1 in 20 is 5 percent, where 1 : 20 is less', () => {
  expect(percentFromOneIn(20)).toBe(5)
  expect(percentFromWaterParts(20)).toBeLessThan(percentFromOneIn(20))
})

test('neat concentrate takes no water', () => {
  expect(percentFromWaterParts(0)).toBe(100)
  expect(waterPartsFromPercent(100)).toBe(0)
  expect(percentFromOneIn(1)).toBe(100)
})

test('plain water has no ratio', () => {
  expect(() => waterPartsFromPercent(0)).toThrow('percent is 0, expected above 0 and at most 100')
})

test.each([
  [() => percentFromWaterParts(-1), 'waterParts is -1'],
  [() => percentFromOneIn(0.5), 'parts is 0.5, expected at least 1'],
  [() => waterPartsFromPercent(100.1), 'percent is 100.1'],
  [() => volumePercentFromMass({ massPercent: 101, concentrateDensity: 1 }), 'massPercent is 101'],
  [() => volumePercentFromMass({ massPercent: 5, concentrateDensity: 0 }), 'concentrateDensity is 0, expected above 0'],
])('what is no mix is refused', (mix, message) => {
  expect(mix).toThrow(message)
})

test('a percentage and its water parts are one and the same strength', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (percent) => {
      expect(Math.abs(percentFromWaterParts(waterPartsFromPercent(percent)) - percent)).toBeLessThanOrEqual(
        1e-12 * percent,
      )
    }),
    { numRuns: 10_000 },
  )
})

test('a concentrate lighter than water takes up more of the volume than of the mass', () => {
  // 5 g of 0.9 g/mL are 5.5556 mL beside 95 g of water, at 0.9982 g/mL 95.1713 mL: 5.5556 in 100.7269, 5.5155 %
  expect(volumePercentFromMass({ massPercent: 5, concentrateDensity: 0.9 })).toBeCloseTo(5.5155, 4)
})

test('a concentrate as heavy as the water has one and the same percentage', () => {
  expect(volumePercentFromMass({ massPercent: 5, concentrateDensity: 1, waterDensity: 1 })).toBeCloseTo(5, 12)
})
