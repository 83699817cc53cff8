/**
 * When to order and how much.
 *
 * Order size, discounts, base stock: L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd ed. 2019, examples and problems by their
 * numbers; values as in the tests of the authors' own package (LarrySnyder/stockpyl, tests/test_eoq.py, test_newsvendor.py, commit 0bae176),
 * read there. Tolerance: 1e-9 of the value printed in full.
 * Render, Stair and Hanna, Quantitative Analysis for Management (EOQ of D 1000, S 10, H 0.50; Brass Department Store), Heizer and Render, and
 * the five reorder points with rounded z: from memory; recomputed with exact z by hand, to the last digit given.
 * Intermittent use: the counts "Scripts" of the Pharmaceutical Benefits Scheme, July 1991 to June 2008 (sktime/sktime, PBS_dataset.csv), with the
 * results of R's forecast::croston for three weights (sktime tests/test_croston.py), both read; the tiny case by hand below.
 *
 * A year has 365 days here; textbook cases that count otherwise are put in a day's figures of their own.
 */
import { expect, test } from 'vitest'
import {
  discountedOrder,
  economicOrder,
  intermittentDemand,
  normalQuantile,
  reorder,
  yearlyOrderCost,
} from '../packages/fluid/src/index.ts'

test.each([
  ['Example 3.1', { yearly: 1300, orderCost: 8, holdingCostPerYear: 0.225 }, 304.0467800264368, 68.41052550594827],
  ['Problem 3.1', { yearly: 182_500, orderCost: 2250, holdingCostPerYear: 275 }, 1728.109844993551, 475_230.2073732266],
  [
    'Render: 1000 a year, 10 an order, 0.50 a year (from memory)',
    { yearly: 1000, orderCost: 10, holdingCostPerYear: 0.5 },
    200,
    100,
  ],
  // √(2 · 5000 · 400 / (0.2 · 140)) = √142,857.14
  [
    '5000 a year, 400 an order, a fifth of 140 a year',
    { yearly: 5000, orderCost: 400, holdingCostPerYear: 28 },
    377.964473,
    null,
  ],
] as const)('%s', (_, costs, quantity, cost) => {
  const found = economicOrder(costs)
  expect(found).toBeCloseTo(quantity, 6)
  if (cost !== null) expect(Math.abs(yearlyOrderCost(found, costs) / cost - 1)).toBeLessThan(1e-9)
})

test('Example 3.1 ordered by 250 costs 69.725 a year', () => {
  expect(yearlyOrderCost(250, { yearly: 1300, orderCost: 8, holdingCostPerYear: 0.225 })).toBeCloseTo(69.725, 9)
})

const steps = (...pairs: [number, number][]) => pairs.map(([from, price]) => ({ from, price }))

test.each([
  [
    'Examples 3.5 and 3.6: three steps of the price',
    { yearly: 1300, orderCost: 8, holdingShare: 0.3, prices: steps([0, 0.75], [400, 0.72], [800, 0.68]) },
    800,
    978.6,
  ],
  [
    'the documentation of the authors’ package: a price of 450 from 500 on',
    { yearly: 1000, orderCost: 200, holdingShare: 0.2, prices: steps([0, 500], [200, 475], [500, 450]) },
    500,
    472_900,
  ],
  [
    'Brass Department Store (from memory)',
    { yearly: 5000, orderCost: 49, holdingShare: 0.2, prices: steps([0, 5], [1000, 4.8], [2000, 4.75]) },
    1000,
    24_725,
  ],
])('%s', (_, asked, quantity, cost) => {
  const found = discountedOrder(asked)
  expect(found.quantity).toBe(quantity)
  expect(found.costPerYear).toBeCloseTo(cost, 6)
})

const noCosts = { orderCost: null, holdingCostPerYear: null, packSize: null }

test.each([
  // z(0.70 / 0.88) · 8 above 50: what is worth keeping where a lack costs 0.70 and a rest 0.18
  ['Example 4.3', { dailyMean: 50, dailySd: 8, leadDays: 1, leadSd: 0, service: 0.7 / 0.88 }, 56.603955927433887, 9],
  // Four periods of wait and the one under review: 250 + z · 8 √5
  ['Example 4.4', { dailyMean: 50, dailySd: 8, leadDays: 5, leadSd: 0, service: 0.7 / 0.88 }, 264.7668943741548, 9],
  [
    '350 in a wait, sd 10, 95 % (from memory; printed 366.5 with z 1.65)',
    { dailyMean: 350, dailySd: 10, leadDays: 1, leadSd: 0, service: 0.95 },
    366.448536,
    6,
  ],
  [
    '15 a day sd 3, 4 days, 97 % (from memory; printed 71.28)',
    { dailyMean: 15, dailySd: 3, leadDays: 4, leadSd: 0, service: 0.97 },
    71.284762,
    6,
  ],
  [
    '25 a day, 6 days sd 3, 98 % (from memory; printed 303.75 with z 2.05)',
    { dailyMean: 25, dailySd: 0, leadDays: 6, leadSd: 3, service: 0.98 },
    304.031,
    3,
  ],
  // σ = √(5 · 16 + 400 · 4) = 40.9878
  [
    '20 a day sd 4, 5 days sd 2, 94 % (from memory; printed 163.53 with z 1.55)',
    { dailyMean: 20, dailySd: 4, leadDays: 5, leadSd: 2, service: 0.94 },
    163.7268,
    4,
  ],
  // 1.281552 · 5 · √6 = 15.6957 above 300
  ['50 a day sd 5, 6 days, 90 %', { dailyMean: 50, dailySd: 5, leadDays: 6, leadSd: 0, service: 0.9 }, 315.6957, 4],
  // σ = √(150 + 10,000) = 100.7472
  ['the same with a wait of sd 2', { dailyMean: 50, dailySd: 5, leadDays: 6, leadSd: 2, service: 0.9 }, 429.1127, 4],
  // 8000 in 250 days, 3 days: 32 · 3
  [
    '32 a day for certain, 3 days (from memory)',
    { dailyMean: 8000 / 250, dailySd: 0, leadDays: 3, leadSd: 0, service: 0.95 },
    96,
    9,
  ],
] as const)('the reorder point of %s', (_, asked, point, digits) => {
  expect(reorder({ ...asked, ...noCosts }).reorderPoint).toBeCloseTo(point, digits)
})

test('2 a day, 12 days, sd 20 in a wait, z 1.64: 56.8 (a worked answer, read; its z is rounded from 1.6449 at 95 %)', () => {
  // z 1.64 belongs to 94.95 %: 24 + 1.64 · 20
  const { reorderPoint, safetyStock } = reorder({
    dailyMean: 2,
    dailySd: 20 / Math.sqrt(12),
    leadDays: 12,
    leadSd: 0,
    service: 0.949497,
    ...noCosts,
  })
  expect(reorderPoint).toBeCloseTo(56.8, 3)
  expect(safetyStock).toBeCloseTo(20 * normalQuantile(0.949497), 9)
})

/** 204 months, 114 with any, 331 in all. */
const scripts =
  `1,1,1,0,0,1,3,1,1,1,1,1,2,1,1,0,0,2,0,0,1,2,0,1,0,0,1,1,1,1,0,0,2,1,0,0,0,1,0,3,3,2,4,1,1,3,3,1,0,4,1,3,0,1,2,5,
14,2,0,0,3,6,2,2,2,5,1,6,3,3,2,0,1,1,0,0,0,1,4,12,4,0,7,0,2,1,4,1,3,1,0,6,9,3,1,3,1,7,1,3,3,3,5,6,10,5,1,3,1,1,
1,2,1,3,7,11,10,5,5,2,2,1,0,3,6,5,8,9,1,1,0,0,0,1,2,2,0,0,0,0,1,0,0,0,2,1,1,0,1,0,0,0,0,0,0,0,0,0,0,0,0,0,1,0,1,
3,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0`
    .split(',')
    .map(Number)

test('the counts are those of the source', () => {
  expect(scripts).toHaveLength(204)
  expect(scripts.reduce((sum, count) => sum + count, 0)).toBe(331)
  expect(scripts.filter((count) => count > 0)).toHaveLength(114)
})

test.each([
  [0.1, 0.8688921],
  [0.5, 0.6754646],
  [0.05, 1.405808],
])('seldom-used prescriptions with a weight of %d: Croston’s rate as R has it', (alpha, rate) => {
  const found = intermittentDemand(scripts, alpha)!
  expect(found.rate).toBeCloseTo(rate, 6)
  // Syntetos and Boylan: (1 − α/2) of it.
  expect(found.corrected).toBeCloseTo((1 - alpha / 2) * rate, 6)
})

test('a tiny case by hand: 5 after three, 3 after four, 4 after two periods', () => {
  // α 0.1: size 5 → 4.8 → 4.72; interval 3 → 3.1 → 2.99; 4.72 / 2.99
  const found = intermittentDemand([0, 0, 5, 0, 0, 0, 3, 0, 4, 0], 0.1)!
  expect(found.size).toBeCloseTo(4.72, 12)
  expect(found.interval).toBeCloseTo(2.99, 12)
  expect(found.rate).toBeCloseTo(1.5785953177, 9)
  expect(found.corrected).toBeCloseTo(1.4996655518, 9)
  // α 0.2: 5 → 4.6 → 4.48; 3 → 3.2 → 2.96
  expect(intermittentDemand([0, 0, 5, 0, 0, 0, 3, 0, 4, 0], 0.2)!.rate).toBeCloseTo(1.5135135135, 9)
})
