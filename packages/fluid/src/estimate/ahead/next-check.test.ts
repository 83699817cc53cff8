import { expect, test } from 'vitest'
import { carryOff, evaporation, fill, strength } from '../state.ts'
import { everyDay, setup, shopOf, sumpOf } from '../testing.ts'
import { nextCheck } from './next-check.ts'
import { untouched } from './untouched.ts'

/** 1 % of the mark evaporates each day, 8 % strong to `sd`. */
function shopAt(sd: number) {
  const shop = shopOf([setup('s', {}, 4)], { calendar: everyDay })
  const { mean, cov } = sumpOf(shop).branches[0]!.belief
  cov.fill(0)
  Object.assign(mean, { [fill]: 1, [strength]: 8, [evaporation]: Math.log(0.01), [carryOff]: -20 })
  cov[strength * 15] = sd ** 2
  return shop
}
const check = (sd: number, low: number, high: number, within: number) =>
  nextCheck(untouched(shopAt(sd), 's', 4), { band: { low, high }, within })

test('a sump is checked before it may have left its band', () => {
  // 9 % is reached after 11.6 days; 5 % of it earlier, since days differ.
  const { days, because } = check(0.01, 6, 9, 30)
  expect(because).toBe('risk')
  expect(days).toBeGreaterThanOrEqual(9)
  expect(days).toBeLessThanOrEqual(12)
})

test('the less sure it is the sooner', () => {
  expect(check(0.4, 6, 9, 30).days).toBeLessThan(check(0.1, 6, 9, 30).days)
})

test('a sump that may be outside now is checked now', () => {
  // 8 % ± 0.5: above 8.5 with 16 %.
  expect(check(0.5, 6, 8.5, 30)).toEqual({ days: 0, because: 'risk' })
  // Below as well as above: 4 % on either side.
  expect(check(1, 8 - 1.75, 8 + 1.75, 30)).toEqual({ days: 0, because: 'risk' })
})

test('a rule is never stretched, and holds where nothing is at risk', () => {
  expect(check(0.01, 6, 9, 7)).toEqual({ days: 7, because: 'rule' })
  expect(check(0.01, 1, 50, 7)).toEqual({ days: 7, because: 'rule' })
  expect(check(5, 7.9, 8.1, 0)).toEqual({ days: 0, because: 'rule' })
})

test('without a band there is only the rule', () => {
  expect(nextCheck(untouched(shopAt(5), 's', 4), { band: null, within: 7 })).toEqual({ days: 7, because: 'rule' })
})
