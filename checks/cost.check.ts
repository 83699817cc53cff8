/**
 * What it costs to keep and to change.
 *
 * Replacement without discounting: two tables of operations-research courses, read in copies on cbom.atozmath.com (ReplaceModel, question 11) and
 * eslm.lpude.in (page 212, which prints 1,837.05 for year 4: a misprint, (6000 + 1350) / 4 is 1837.5), a variant of the second on scribd 40257466; every average worked
 * again by hand from its sum. Tolerance: half of the last digit given.
 *
 * Age replacement: optimum of a component with Weibull beta 2.5, eta 1000 h, cost 1 planned and 5 in failure, given as 493.0470 h in a published
 * example of reliability software's documentation (from memory); beta 3, eta 150 d, costs 2 and 8 after a newsletter of February 2009 whose inputs were read and
 * whose answer was not in the copy. Both optima and rates were computed a second time, by adaptive quadrature and a bracketing minimum in another language:
 * 493.0469578 h at 0.00346204274; 83.1229825 d at 0.0368502945. Tolerance 1e-6 relative: the quadratures.
 *
 * Economic life of a charge: closed form √(2 C / g), by hand. Costs of a month: hand arithmetic shown beside each.
 */
import { expect, test } from 'vitest'
import {
  concentrateAboveTarget,
  concentrateToHold,
  costGrowth,
  economicLife,
  microCents,
  replacementPeriod,
  toCents,
  wholeParts,
} from '../packages/fluid/src/index.ts'

test.each([
  // 12 200 less 200 of scrap
  [
    'a machine of 12,200',
    12_000,
    [200, 500, 800, 1200, 1800, 2500, 3200, 4000],
    6,
    [12200, 6350, 4500, 3675, 3300, 3166.67, 3171.43, 3275],
  ],
  [
    'a machine of 6,100',
    6000,
    [100, 250, 400, 600, 900, 1250, 1600, 2000],
    6,
    [6100, 3175, 2250, 1837.5, 1650, 1583.33, 1585.71, 1637.5],
  ],
  // With 1,200 in the sixth year: 6000 + 2250 + 1200 = 9450 over 6 are 1575.
  [
    'the same with a cheaper sixth year',
    6000,
    [100, 250, 400, 600, 900, 1200, 1600, 2000],
    6,
    [6100, 3175, 2250, 1837.5, 1650, 1575, 1578.57, 1631.25],
  ],
])('%s is replaced when the textbook says, at its averages', (_, changeCost, running, period, averages) => {
  const found = replacementPeriod({ changeCost, running })
  expect(found.period).toBe(period)
  for (const [n, average] of averages.entries())
    expect(Math.abs(found.averages[n]! - average)).toBeLessThanOrEqual(0.005)
})

test('the textbook’s rule holds: the year after the best one costs more than the average so far, the best one less', () => {
  const running = [200, 500, 800, 1200, 1800, 2500, 3200, 4000]
  const { period, averages } = replacementPeriod({ changeCost: 12_000, running })
  expect(running[period]!).toBeGreaterThan(averages[period - 1]!) // 3200 > 3166.67
  expect(running[period - 1]!).toBeLessThan(averages[period - 2]!) // 2500 < 3300
})

test.each([
  ['beta 2.5, eta 1000 h, 1 against 5', { scale: 1000, shape: 2.5, cost: 5 }, 1, 493.0469578, 0.00346204274],
  ['beta 3, eta 150 d, 2 against 8', { scale: 150, shape: 3, cost: 8 }, 2, 83.1229825, 0.0368502945],
])('age replacement, %s', (_, spoiling, changeCost, days, rate) => {
  const found = economicLife({ changeCost, running: { start: 0, growth: 0 }, spoiling })
  expect(found.outcome).toBe('change')
  expect(Math.abs(found.days! / days - 1)).toBeLessThan(1e-6)
  expect(Math.abs(found.costPerDay / rate - 1)).toBeLessThan(1e-6)
})

test.each([
  // √(2 × 450 / 0.01) = √90 000; 1.5 + √(2 × 450 × 0.01) = 1.5 + 3
  [450, 1.5, 0.01, 300, 4.5],
  // √(2 × 800 / 0.04) = √40 000; 0 + √(2 × 800 × 0.04) = 8
  [800, 0, 0.04, 200, 8],
  // √(2 × 98 / 1) = 14; 5 + 14
  [98, 5, 1, 14, 19],
])('a change of %d with %d a day growing by %d pays after %d days', (changeCost, start, growth, days, costPerDay) => {
  const found = economicLife({ changeCost, running: { start, growth } })
  expect(found.days).toBeCloseTo(days, 9)
  expect(found.costPerDay).toBeCloseTo(costPerDay, 9)
})

test('a life half or twice as long as the best costs a quarter more of what change and age cost', () => {
  // (1/r + r) / 2 at r = 1/2 and 2 is 1.25: 1.5 + 1.25 × 3 = 5.25.
  const { curve } = economicLife({ changeCost: 450, running: { start: 1.5, growth: 0.01 } })
  for (const days of [150, 600])
    expect(curve.find((point) => Math.abs(point.days - days) < 1e-6)!.costPerDay).toBeCloseTo(5.25, 9)
})

test('the continuous life agrees with the table of whole days it is the limit of', () => {
  // Day by day 0.01 × (t − ½): the mean of start + growth × t over day t. 2 × 450 / 0.01 is 300 squared, so the table's best is day 300.
  const running = Array.from({ length: 600 }, (_, n) => 1.5 + 0.01 * (n + 0.5))
  const { period, average } = replacementPeriod({ changeCost: 450, running })
  expect(period).toBe(300)
  expect(average).toBeCloseTo(4.5, 9)
})

test.each([
  // 7.9 L of concentrate at 4.90: 38.71.
  ['7.9 L at 4.90', 7.9, 4.9, 3871],
  // 52.1 L of deionised water at 0.013: 0.6773.
  ['52.1 L at 0.013', 52.1, 0.013, 68],
  // Five minutes at 42 an hour: 42 / 12.
  ['5 minutes at 42 an hour', 5 / 60, 42, 350],
  // 200 L at 0.285.
  ['200 L at 0.285', 200, 0.285, 5700],
])('%s are so many cents', (_, amount, price, cents) => {
  expect(toCents(microCents(amount, price)!)).toBe(cents)
})

test('a hundred buckets of tap water cost 4.80, though each is rounded to nothing by the cent', () => {
  const bucket = microCents(12, 0.004)!
  expect(toCents(100 * bucket)).toBe(480)
})

test('shares of 412.37 said in whole units add up to 412', () => {
  // 310.45 + 61.42 + 40.50: down to 310, 61 and 40 one is missing, and 0.50 is the largest remainder.
  expect(wholeParts([31045, 6142, 4050], 100)).toEqual([31000, 6100, 4100])
})

test('a sump at 9 % instead of 7.5 % that loses 4 L a day carries off 1.8 L of concentrate a month for nothing', () => {
  // 1.5 % × 4 L × 30 days
  expect(concentrateAboveTarget({ strengths: Array(30).fill(9), target: 7.5, carryOff: 4 })).toBeCloseTo(1.8, 12)
})

test('a sump of 400 L from 6.0 % to 7.5 % in a month of 5 L a day takes 6 + 11.25 L of concentrate', () => {
  // 400 × 1.5 % and 5 × 30 × 7.5 %
  const need = concentrateToHold({
    start: { volume: 400, concentration: 6 },
    endVolume: 400,
    target: 7.5,
    carryOff: 5,
    days: 30,
    drawnOff: 0,
  })
  expect(need).toBeCloseTo(17.25, 12)
})

test('the growth of a cost has the interval of a regression slope', () => {
  // x 1…5, y 2, 4, 5, 4, 5: slope 0.6, residual variance 2.4 / 3 = 0.8, slope sd √(0.8 / 10) = 0.282843, t(0.95, 3) = 2.353363 (table of
  // Student's distribution): 0.6 ± 0.665631. The points are a common classroom example.
  const found = costGrowth([2, 4, 5, 4, 5].map((costPerDay, n) => ({ age: n + 1, costPerDay })))
  if (found.outcome === 'too-few') throw new Error('five are enough')
  expect(found.growth).toBeCloseTo(0.6, 12)
  expect(found.low90).toBeCloseTo(0.6 - 0.665631, 5)
  expect(found.high90).toBeCloseTo(0.6 + 0.665631, 5)
  expect(found.outcome).toBe('flat')
})
