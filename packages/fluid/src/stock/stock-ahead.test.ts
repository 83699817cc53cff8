import { expect, test } from 'vitest'
import { orderSize } from './order-size.ts'
import { reorder } from './reorder.ts'
import { type StockAheadQuestion, stockAhead } from './stock-ahead.ts'

const sure = { dailyMean: 5, dailySd: 0, dailyMeanSd: 0 }
const lot = (name: string, litres: number, expiresOn: number | null = null) => ({
  lot: name,
  litres,
  expiresOn,
  receivedOn: 0,
})
const asked: StockAheadQuestion = {
  today: 1000,
  lots: [lot('A', 100)],
  demand: sure,
  planned: [],
  onOrder: [],
  leadDays: 5,
  safetyStock: 0,
}

test('twenty days of use last for twenty days', () => {
  expect(stockAhead(asked).runsOutOn).toEqual({ likely: 1020, earliest: 1020, latest: 1020 })
})

test('without safety stock the order is due the wait before the shelf is empty, with it so much sooner', () => {
  expect(stockAhead(asked).orderBy).toBe(1015)
  // 100 − 5 t ≤ 20 first at t = 16
  expect(stockAhead({ ...asked, safetyStock: 20 }).orderBy).toBe(1011)
})

test('for steady use the order is due when stock is down to the reorder point', () => {
  const { reorderPoint, safetyStock } = reorder({
    ...sure,
    dailySd: 2,
    leadDays: 5,
    leadSd: 0,
    service: 0.95,
    orderCost: null,
    holdingCostPerYear: null,
    packSize: null,
  })
  const { orderBy } = stockAhead({ ...asked, safetyStock })
  const [onThatDay, dayBefore] = [100 - 5 * (orderBy! - 1000), 100 - 5 * (orderBy! - 1001)]
  expect(onThatDay).toBeLessThanOrEqual(reorderPoint)
  expect(dayBefore).toBeGreaterThan(reorderPoint)
})

test('a shelf below its reorder point orders today, one without use never', () => {
  expect(stockAhead({ ...asked, lots: [lot('A', 10)] }).orderBy).toBe(1000)
  expect(stockAhead({ ...asked, demand: { dailyMean: 0, dailySd: 0, dailyMeanSd: 0 } })).toMatchObject({
    runsOutOn: { likely: null },
    orderBy: null,
  })
})

test('a planned cleanout comes on top, and one that is overdue may come today', () => {
  const planned = [{ on: 1010, litres: 60, what: 'Cleanout of Mill 8' }]
  expect(stockAhead({ ...asked, planned }).runsOutOn.likely).toBe(1010)
  expect(stockAhead({ ...asked, planned: [{ ...planned[0]!, on: 990 }] }).runsOutOn.likely).toBe(1008)
})

test('what is on its way puts the next order off, and does not make today’s stock last longer', () => {
  const coming = stockAhead({ ...asked, onOrder: [{ litres: 200, expectedOn: 1003 }] })
  expect(coming.orderBy).toBe(1055)
  expect(coming.runsOutOn.likely).toBe(1020)
  expect(stockAhead({ ...asked, onOrder: [{ litres: 200, expectedOn: 900 }] }).orderBy).toBe(1055)
})

test('what grows too old before it is used is gone, and told', () => {
  const { runsOutOn, expiring } = stockAhead({ ...asked, lots: [lot('A', 100, 1010), lot('B', 100, 1200)] })
  expect(expiring).toEqual([{ lot: 'A', litres: 50, on: 1010 }])
  expect(runsOutOn.likely).toBe(1030)
})

test('what is too old already does not count', () => {
  expect(stockAhead({ ...asked, lots: [lot('A', 100, 1000)] })).toMatchObject({
    runsOutOn: { likely: 1000 },
    orderBy: 1000,
    expiring: [{ lot: 'A', litres: 100, on: 1000 }],
  })
})

test('the less sure the use, the wider the days', () => {
  const { earliest, latest } = stockAhead({ ...asked, demand: { dailyMean: 5, dailySd: 3, dailyMeanSd: 1 } }).runsOutOn
  // 5t + 1.645 √(9t + t²) = 100: t = 13.81 (t² + 9t = 315.0, root 17.75, 69.05 + 29.2 = 98.2 at 13.81; 100 at 14.08)
  expect(earliest).toBe(1014)
  expect(latest).toBeGreaterThan(1026)
})

test('a quantity below nothing is refused', () => {
  expect(() => stockAhead({ ...asked, safetyStock: -1 })).toThrow('safetyStock is -1')
  expect(() => stockAhead({ ...asked, demand: { ...sure, dailyMean: Number.NaN } })).toThrow('dailyMean is NaN')
})

const size = { packSize: 200, dailyMean: 7, economicQuantity: 420, reorderPoint: 80, position: 70, shelfDays: null }

test.each([
  ['the cheapest count', {}, 2, 'cost'],
  ['four weeks’ use where costs are unknown', { economicQuantity: null, dailyMean: 15 }, 2, 'four-weeks'],
  ['one drum at least', { economicQuantity: null, dailyMean: 1 }, 1, 'four-weeks'],
  ['as many as lift it above the reorder point', { reorderPoint: 700, position: 50 }, 4, 'far-below'],
  ['one more where it would stand on the reorder point', { reorderPoint: 470, position: 70 }, 3, 'far-below'],
  ['no more than is used before it is too old', { economicQuantity: 2000, shelfDays: 100 }, 3, 'shelf-life'],
  ['never none', { dailyMean: 0.1, shelfDays: 100 }, 1, 'shelf-life'],
] as const)('an order is %s', (_, change, packs, because) => {
  expect(orderSize({ ...size, ...change })).toEqual({ packs, litres: 200 * packs, because })
})
