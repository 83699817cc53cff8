import { expect, test } from 'vitest'
import { bringTo, exposureOf } from './passing.ts'
import { publishedPriors } from './priors.ts'
import { carryOff, evaporation, fill } from './state.ts'
import { mondayToFriday, setup, shopOf, sumpOf } from './testing.ts'

const { idle } = publishedPriors
const shop = () => shopOf([setup('s', {}, 4)], { calendar: mondayToFriday })

test('a week has five days of work, and two at rest on which some of the water still goes', () => {
  const time = exposureOf(shop(), sumpOf(shop()), 4, 11)
  expect(time.days).toBe(7)
  expect(time.evaporation).toBeCloseTo(5 + 2 * idle.evaporation, 12)
  expect(time.carryOff).toBeCloseTo(5 + 2 * idle.carryOff, 12)
})

test('a machine that stands is at rest on days of work as well', () => {
  const sump = { ...sumpOf(shop()), idles: [{ from: 4, until: 11 }] }
  expect(exposureOf(shop(), sump, 4, 11).evaporation).toBeCloseTo(7 * idle.evaporation, 12)
})

test('a sump is brought to a time once, and a clock that goes back changes nothing', () => {
  const told = shop()
  const sump = sumpOf(told)
  const { mean } = sump.branches[0]!.belief
  const [before, e, d] = [mean[fill]!, Math.exp(mean[evaporation]!), Math.exp(mean[carryOff]!)]
  bringTo(told, sump, 11)
  const at11 = mean[fill]
  // The published losses of a day, as shares of the mark.
  expect(at11).toBeCloseTo(before - e * (5 + 2 * idle.evaporation) - d * (5 + 2 * idle.carryOff), 9)
  for (const at of [11, 4, Number.NaN]) bringTo(told, sump, at)
  expect([sump.at, mean[fill]]).toEqual([11, at11])
})
