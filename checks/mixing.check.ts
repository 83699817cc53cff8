/**
 * Ratios, alligation and mixing into a sump.
 *
 * "1 part concentrate to N parts water" is 100 / (1 + N), computed here from the definition; tolerance: half of the last digit given. By mass, after
 * ASTM D4627: plain mass balance, worked out in the test.
 * Alligation: pharmacy arithmetic (70 % and 20 % to 30 % is 1 : 4; 50 % and 100 % to 20 mL of 70 % is 12 + 8 mL), read in a copy; US Army subcourse MD0802,
 * problem with answer C (300 mL of 70 % to 40 % takes 225 mL of water), read in a copy. Exact numbers, so the tolerance is a double's last bits.
 * Sump forms: plain mass balance.
 */
import { expect, test } from 'vitest'
import {
  alligation,
  amountToReach,
  fillUpStrength,
  percentFromOneIn,
  percentFromWaterParts,
  tracerVolume,
  volumePercentFromMass,
  waterPartsFromPercent,
} from '../packages/fluid/src/index.ts'

test.each([
  [10, 9.0909],
  [15, 6.25],
  [20, 4.7619],
  [25, 3.8462],
  [30, 3.2258],
  [50, 1.9608],
])('1 part concentrate to %d parts water is %d percent', (waterParts, percent) => {
  expect(percentFromWaterParts(waterParts)).toBeCloseTo(percent, 4)
  // The percentage is given to 0.00005, which 100/percent² turns into parts.
  expect(Math.abs(waterPartsFromPercent(percent) - waterParts)).toBeLessThan((100 / percent ** 2) * 0.00005 * 1.01)
})

test('1 in 20 is the other convention: 5 percent', () => {
  expect(percentFromOneIn(20)).toBe(5)
})

test('5 percent by mass of a concentrate of 0.9 kg/L in water of 1 kg/L is 5.525 percent by volume', () => {
  // 5 / 0.9 = 5.55556 mL and 95 mL: 5.55556 / 100.55556
  expect(volumePercentFromMass({ massPercent: 5, concentrateDensity: 0.9, waterDensity: 1 })).toBeCloseTo(5.525, 3)
})

test('70 and 20 percent make 30 percent in parts of 1 : 4', () => {
  const mix = alligation({ first: 70, second: 20, wanted: 30 })
  expect(mix).toEqual({ outcome: 'parts', first: expect.closeTo(1 / 5, 12), second: expect.closeTo(4 / 5, 12) })
})

test('50 and 100 percent make 20 mL of 70 percent from 12 and 8 mL', () => {
  const mix = alligation({ first: 50, second: 100, wanted: 70 })
  if (mix.outcome !== 'parts') throw new Error(mix.outcome)
  expect([20 * mix.first, 20 * mix.second]).toEqual([expect.closeTo(12, 10), expect.closeTo(8, 10)])
})

test('300 mL of 70 percent come to 40 percent with 225 mL of water', () => {
  expect(amountToReach({ volume: 300, concentration: 70, strength: 0, target: 40 })).toMatchObject({ add: 225 })
})

test('150 L at 6.5 percent are filled up to 200 L at 6 percent with 50 L at 4.5 percent', () => {
  const fill = fillUpStrength({ volume: 150, concentration: 6.5, total: 200, target: 6 })
  expect(fill).toEqual({ outcome: 'strength', add: 50, strength: expect.closeTo(4.5, 12) })
})

test('400 L at 4 percent come to 6 percent with 8.5106 L of neat concentrate', () => {
  const amount = amountToReach({ volume: 400, concentration: 4, strength: 100, target: 6 })
  expect(amount).toMatchObject({ outcome: 'amount', add: expect.closeTo(8.5106, 4) })
})

test('400 L at 9 percent come to 6 percent with 200 L of water', () => {
  expect(amountToReach({ volume: 400, concentration: 9, strength: 0, target: 6 })).toMatchObject({ add: 200 })
})

test('the same step the other way round: 8.5106 L that lift 4 to 6 percent were poured into 400 L', () => {
  // 8.5106 is given to 0.00005 L, which the 94 / 2 of this step makes 0.0024 L of volume.
  const found = tracerVolume({ before: 4, after: 6, added: 8.5106 })
  if (found.outcome !== 'volume') throw new Error(found.outcome)
  expect(Math.abs(found.volume - 400)).toBeLessThan(0.0024)
})
