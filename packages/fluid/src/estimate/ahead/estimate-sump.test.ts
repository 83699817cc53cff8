import { expect, test } from 'vitest'
import { packShopEstimate } from '../pack.ts'
import { carryOff, chloride, evaporation, fill, hardness, scale, strength } from '../state.ts'
import { everyDay, keptSump, mondayToFriday, readingOf, setup, shopOf, sumpOf, trueDays } from '../testing.ts'
import { estimateSump } from './estimate-sump.ts'

function knownShop(calendar = everyDay) {
  const shop = shopOf([setup('s', {}, 4)], { calendar })
  const { mean, cov } = sumpOf(shop).branches[0]!.belief
  cov.fill(0)
  Object.assign(mean, {
    [fill]: 0.9,
    [strength]: 8,
    [hardness]: 100,
    [chloride]: 60,
    [evaporation]: Math.log(0.015),
    [carryOff]: Math.log(0.005),
    [scale]: Math.log(1.1),
  })
  return shop
}

test('what is known is told in litres, percent and mg/L', () => {
  const { now } = estimateSump(knownShop(), 's', 4, [])
  expect(now.volume.mean).toBeCloseTo(0.9 * 1.1 * 200, 9)
  expect(now.markVolume.mean).toBeCloseTo(220, 9)
  expect(now.concentration).toEqual({ mean: 8, sd: 0, low90: 8, high90: 8 })
  expect([now.hardness.mean, now.chloride.mean]).toEqual([100, 60])
})

test('litres are as uncertain as fill and mark together, and less where one is known against the other', () => {
  const shop = knownShop()
  const { cov } = sumpOf(shop).branches[0]!.belief
  const size = 14
  cov[fill * (size + 1)] = 0.0016
  cov[scale * (size + 1)] = 0.01
  // r ± 0.04, ln s ± 0.1, r 0.9, mark 220: 220 · √(0.0016 + 0.9² · 0.01) = 21.67; with a covariance of −0.003: − 2 · 0.9 · 0.003.
  const sd = () => estimateSump(shop, 's', 4, []).now.volume.sd
  expect(sd()).toBeCloseTo(220 * Math.sqrt(0.0016 + 0.0081), 9)
  cov[fill * size + scale] = -0.003
  cov[scale * size + fill] = -0.003
  expect(sd()).toBeCloseTo(220 * Math.sqrt(0.0016 + 0.0081 - 0.0054), 9)
})

test('losses are told in litres a calendar day, idle days included', () => {
  // 0.015 · 220 = 3.3 L on a day of work.
  expect(estimateSump(knownShop(), 's', 4, []).now.evaporation.mean).toBeCloseTo(3.3, 9)
  // Five of seven days at work, two at 0.35 of it: 3.3 · 5.7 / 7; of carry-off 1.1 · 5.08 / 7.
  const { now } = estimateSump(knownShop(mondayToFriday), 's', 4, [])
  expect(now.evaporation.mean).toBeCloseTo((3.3 * 5.7) / 7, 9)
  expect(now.carryOff.mean).toBeCloseTo((1.1 * 5.08) / 7, 9)
})

test('days ahead are those on which nothing is poured or drawn', () => {
  const { ahead } = estimateSump(knownShop(), 's', 4, [1, 10])
  // A day: 0.9 − 0.02; ten: 0.9 − 0.2, and 8 · (0.9 / 0.7)^(3/4) · e^(−0.007) percent.
  expect(ahead.map(({ days }) => days)).toEqual([1, 10])
  expect(ahead[0]!.volume.mean).toBeCloseTo(0.88 * 220, 6)
  expect(ahead[1]!.volume.mean).toBeCloseTo(0.7 * 220, 3)
  expect(ahead[1]!.concentration.mean).toBeCloseTo(8 * (0.9 / 0.7) ** 0.75 * Math.exp(-0.007), 2)
})

test('the farther ahead the less sure; the inner half lies inside', () => {
  const { events, at } = keptSump('s')
  const { now, ahead } = estimateSump(shopOf(events), 's', at, [3, 7, 14, 28])
  let before = now.concentration.sd
  for (const { concentration, inner } of ahead) {
    expect(concentration.sd).toBeGreaterThan(before)
    before = concentration.sd
    expect(inner.concentration.low).toBeGreaterThan(concentration.low90)
    expect(inner.concentration.high).toBeLessThan(concentration.high90)
  }
})

test('a sump that may run low may become much stronger, not as much weaker', () => {
  const shop = knownShop()
  const { mean, cov } = sumpOf(shop).branches[0]!.belief
  mean[fill] = 0.6
  cov[evaporation * 15] = 0.5 ** 2
  const [ahead] = estimateSump(shop, 's', 4, [14]).ahead
  const { mean: middle, low90, high90 } = ahead!.concentration
  expect(high90 - middle).toBeGreaterThan(1.3 * (middle - low90))
})

test('a week ahead of a sump that nobody touches is as it comes to be', () => {
  const { events, truth, at } = keptSump('s', { weeks: 12 })
  const [week] = estimateSump(shopOf(events), 's', at + 0.1, [7]).ahead
  trueDays(truth, 7)
  expect(week!.concentration.low90).toBeLessThan(truth.concentration)
  expect(week!.concentration.high90).toBeGreaterThan(truth.concentration)
  expect(week!.volume.low90).toBeLessThan(truth.volume)
  expect(week!.volume.high90).toBeGreaterThan(truth.volume)
})

test('to ask changes nothing, and a time before the last record is taken as its', () => {
  const { events, at } = keptSump('s')
  const shop = shopOf(events)
  const before = JSON.stringify(packShopEstimate(shop))
  const then = estimateSump(shop, 's', at + 30, [1, 50])
  expect(JSON.stringify(packShopEstimate(shop))).toBe(before)
  expect(estimateSump(shop, 's', at + 30, [1, 50])).toEqual(then)
  expect(estimateSump(shop, 's', 0, [7])).toEqual(estimateSump(shop, 's', sumpOf(shop).at, [7]))
})

test('it says when the youngest record that moved it was made, and nothing before the first', () => {
  expect(estimateSump(shopOf([setup('s')]), 's', 5, []).dataAt).toBe(null)
  const { events, at } = keptSump('s')
  expect(estimateSump(shopOf(events), 's', at + 9, []).dataAt).toBe(events.at(-1)!.at)
})

test('a figure set aside stays a doubt until the sump is read again, or for two weeks', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const told = [...events, readingOf('s', at + 4, truth, { brix: 82 })]
  const isOpen = (then: number) => estimateSump(shopOf(told), 's', then, []).doubts.map(({ open }) => open)
  expect(isOpen(at + 5)).toEqual([true])
  for (const days of [3, 4]) {
    trueDays(truth, days)
    told.push(readingOf('s', told.at(-1)!.at + days, truth))
  }
  expect(isOpen(at + 12)).toEqual([false])
})

test('a sump that no record describes has no estimate', () => {
  expect(() => estimateSump(shopOf([]), 's', 1, [])).toThrow(RangeError)
})
