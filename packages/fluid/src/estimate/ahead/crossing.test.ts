import { expect, test } from 'vitest'
import { carryOff, evaporation, fill, hardness, scale, strength } from '../state.ts'
import { everyDay, mondayToFriday, setup, shopOf, sumpOf } from '../testing.ts'
import { crossingHorizon, crossingOf, type WatchedLimits } from './crossing.ts'
import { untouched } from './untouched.ts'

/** A sump of 200 L of which all is known: 1 % of the mark evaporates on a day of work, next to nothing is carried off. */
function knownShop(calendar = everyDay) {
  const shop = shopOf([setup('s', {}, 4)], { calendar })
  const { mean, cov } = sumpOf(shop).branches[0]!.belief
  cov.fill(0)
  Object.assign(mean, {
    [fill]: 1,
    [strength]: 8,
    [hardness]: 100,
    [evaporation]: Math.log(0.01),
    [carryOff]: -20,
    [scale]: 0,
  })
  return shop
}
const crossing = (limits: WatchedLimits, shop = knownShop()) => crossingOf(untouched(shop, 's', 4), limits)

test('a known drift crosses on the day reckoned by hand', () => {
  // Level: 200 L less 2 a day is under 180 L after 10 days. Days, the eye and the mark itself add some days to either side.
  const level = crossing({ volumeLow: 180 })!
  expect(level.limit).toBe('volume.low')
  expect(Math.abs(level.likely - 10)).toBeLessThan(0.25)
  expect(level.probability).toBeGreaterThan(0.999)
  expect(level.earliest).toBeLessThan(level.likely)
  expect(level.latest).toBeGreaterThan(level.likely)
  expect(level.latest - level.earliest).toBeLessThan(8)
})

test('evaporation alone brings the strength to 8 / (1 − 0.01 t), less what is used up', () => {
  // 9 %: 1 − 0.01 t = 8 / 9 · e^(−0.0007 t): t = 11.84 days.
  const strong = crossing({ concentration: { high: 9 } })!
  expect(strong.limit).toBe('concentration.high')
  expect(Math.abs(strong.likely - 11.84)).toBeLessThan(0.4)
})

test('days on which nobody works are days', () => {
  const { likely } = crossing({ volumeLow: 180 }, knownShop(mondayToFriday))!
  // From a Monday: 5 + 2 · 0.35 = 5.7 days' worth in the first week, 4.3 of the next: 7 + 4.3. A day's part is straight.
  expect(Math.abs(likely - 11.3)).toBeLessThan(0.5)
})

test('what is beyond its limit already crosses now', () => {
  expect(crossing({ volumeLow: 210 })).toEqual({
    limit: 'volume.low',
    probability: 1,
    earliest: 0,
    likely: 0,
    latest: 0,
  })
  expect(crossing({ concentration: { low: 9 } })).toMatchObject({ limit: 'concentration.low', likely: 0 })
})

test('what is likelier beyond its limit already than not crosses now, however surely it will later', () => {
  const shop = knownShop()
  sumpOf(shop).branches[0]!.belief.cov[fill * 15] = 0.01
  // 200 L ± 20: under 205 L with 0.6.
  const now = crossing({ volumeLow: 205 }, shop)!
  expect(now).toMatchObject({ earliest: 0, likely: 0, latest: 0 })
  expect(now.probability).toBeGreaterThan(0.99)
  // Under 195 L with 0.4 only: not yet.
  expect(crossing({ volumeLow: 195 }, shop)!.latest).toBeGreaterThan(1)
})

test('what is not reached within the horizon is not crossed', () => {
  expect(crossing({ volumeLow: 200 - 2 * crossingHorizon - 30 })).toBe(null)
  expect(crossing({ hardnessHigh: 5000, chlorideHigh: 5000 })).toBe(null)
})

test('what nobody watches is not crossed', () => {
  expect(crossing({})).toBe(null)
})

test('of several limits the likeliest first is told', () => {
  expect(crossing({ volumeLow: 180, concentration: { high: 8.5 } })!.limit).toBe('concentration.high')
  expect(crossing({ volumeLow: 195, concentration: { high: 8.5 } })!.limit).toBe('volume.low')
})

test('what may be crossed or not is told with its probability; a twentieth is the least', () => {
  const shop = knownShop()
  const { belief } = sumpOf(shop).branches[0]!
  belief.cov[strength * 15] = 0.25
  // 8 % ± 0.5 stays below 7.5 % by 0.159: strength only rises, so that it is so now or never.
  const now = crossing({ concentration: { low: 7.5 } }, shop)!
  expect(now.probability).toBeCloseTo(0.1587, 2)
  expect(now).toMatchObject({ earliest: 0 })
  // 6.9 %: 0.014.
  expect(crossing({ concentration: { low: 6.9 } }, shop)).toBe(null)
})

test('asked about a sump that nobody described it says so', () => {
  expect(() => crossingOf(untouched(knownShop(), 'nowhere', 4), {})).toThrow(/no sump nowhere/)
})
