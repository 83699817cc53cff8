import { expect, test } from 'vitest'
import { packShopEstimate } from '../pack.ts'
import { chemistry } from '../priors.ts'
import { carryOff, chloride, evaporation, fill, full, gain, hardness, strength } from '../state.ts'
import { everyDay, setup, shopOf, sumpOf } from '../testing.ts'
import { toppedUp } from './topped-up.ts'

/** 200 L of which all is known: 3 L evaporate and 1 L is carried off each day. */
function knownShop() {
  const shop = shopOf([setup('s', {}, 4)], { calendar: everyDay })
  const { mean, cov } = sumpOf(shop).branches[0]!.belief
  mean.fill(0)
  cov.fill(0)
  Object.assign(mean, {
    [fill]: 1,
    [full]: 1,
    [strength]: 8,
    [hardness]: 40,
    [chloride]: 40,
    [gain]: 0,
    [evaporation]: Math.log(0.015),
    [carryOff]: Math.log(0.005),
  })
  return shop
}
const plan = (strengthPoured: number, minerals: number, every = 1) => ({
  strength: strengthPoured,
  water: { hardness: minerals, chloride: minerals },
  every,
})

test('topped up every day with what holds the target, a sump stays there, at its mark', () => {
  // 8 · (1 + 200 · k) / 4, with what is used up.
  const strengthPoured = (8 * (0.005 + chemistry.depletion)) / 0.02
  for (const { concentration, volume } of toppedUp(knownShop(), 's', 4, plan(strengthPoured, 10), [0, 30, 90])) {
    expect(Math.abs(concentration.mean - 8)).toBeLessThan(0.1)
    expect(Math.abs(volume.mean - 200)).toBeLessThan(1)
  }
})

test('in months the minerals come to (evaporation + carry-off) / carry-off times those of the top-ups', () => {
  // Cycles 4, time constant 200 days: 40 · 4 = 160 less 120 · e^(−t/200) at first.
  const [now, later, end] = toppedUp(knownShop(), 's', 4, plan(0, 30), [0, 200, 1200])
  expect(now!.hardness.mean).toBeCloseTo(40, 1)
  expect(Math.abs(later!.hardness.mean - (120 - 80 / Math.E))).toBeLessThan(2)
  expect(Math.abs(end!.hardness.mean - 120)).toBeLessThan(2)
})

test('with deionised water they wash out', () => {
  const [later] = toppedUp(knownShop(), 's', 4, plan(0, 0), [200])
  expect(Math.abs(later!.hardness.mean - 40 / Math.E)).toBeLessThan(1)
})

test('between two fills it runs down: the first is now, the next after its days', () => {
  const volumes = toppedUp(knownShop(), 's', 4, plan(5, 30, 7), [6.9, 7, 0]).map(({ volume }) => volume.mean)
  expect(volumes[0]!).toBeCloseTo(200 - 4 * 6.9, 0)
  expect(volumes[1]!).toBeCloseTo(200, 0)
  expect(volumes[2]!).toBeCloseTo(200, 0)
})

test('answers come in the order of the days asked for, and asking changes nothing', () => {
  const shop = knownShop()
  const before = JSON.stringify(packShopEstimate(shop))
  const forth = toppedUp(shop, 's', 4, plan(5, 30), [1, 20, 5])
  const back = toppedUp(shop, 's', 4, plan(5, 30), [5, 20, 1])
  expect(forth.map(({ days }) => days)).toEqual([1, 20, 5])
  expect(back.toReversed()).toEqual([forth[0], forth[1], forth[2]])
  expect(JSON.stringify(packShopEstimate(shop))).toBe(before)
})
