import { expect, test } from 'vitest'
import { bringTo, exposureOf } from './passing.ts'
import { fill } from './state.ts'
import { mondayToFriday, setup, shopOf, sumpOf } from './testing.ts'

const shop = () => shopOf([setup('s', {}, 4)], { calendar: mondayToFriday })

test('a week has five days of work, and two at rest on which a third of the water still goes', () => {
  // 5 + 0.35 · 2 = 5.7 days of evaporation, 5 + 0.04 · 2 = 5.08 of carry-off.
  const time = exposureOf(shop(), sumpOf(shop()), 4, 11)
  expect(time.days).toBe(7)
  expect(time.evaporation).toBeCloseTo(5.7, 12)
  expect(time.carryOff).toBeCloseTo(5.08, 12)
})

test('a machine that stands is at rest on days of work as well', () => {
  const sump = { ...sumpOf(shop()), idles: [{ from: 4, until: 11 }] }
  expect(exposureOf(shop(), sump, 4, 11).evaporation).toBeCloseTo(0.35 * 7, 12)
})

test('a sump is brought to a time once, and a clock that goes back changes nothing', () => {
  const told = shop()
  const sump = sumpOf(told)
  bringTo(told, sump, 11)
  const { mean } = sump.branches[0]!.belief
  const at11 = mean[fill]
  // e + d = 0.016 · 5.7 + 0.006 · 5.08 of the mark.
  expect(at11).toBeCloseTo(0.93 - 0.016 * 5.7 - 0.006 * 5.08, 9)
  for (const at of [11, 4, Number.NaN]) bringTo(told, sump, at)
  expect([sump.at, mean[fill]]).toEqual([11, at11])
})
