import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Replenishment, reorder } from './reorder.ts'

const drums: Replenishment = {
  dailyMean: 10,
  dailySd: 4,
  leadDays: 9,
  leadSd: 0,
  service: 0.95,
  orderCost: 60,
  holdingCostPerYear: 1,
  packSize: 200,
}

test('safety stock grows with the root of the wait, and with how badly the wait is known', () => {
  // σ = √9 · 4 = 12; with a wait of sd 1: √(144 + 100) = 15.62
  expect(reorder(drums).leadDemandSd).toBeCloseTo(12, 12)
  expect(reorder({ ...drums, leadSd: 1 }).leadDemandSd).toBeCloseTo(15.620499, 6)
})

test('a mean that is badly known counts for the whole wait', () => {
  // √(144 + (9 · 1)²) = 15
  expect(reorder({ ...drums, dailyMeanSd: 1 }).leadDemandSd).toBeCloseTo(15, 12)
})

test('at a service of one half nothing is kept against bad luck', () => {
  expect(reorder({ ...drums, service: 0.5 })).toMatchObject({ safetyStock: 0, reorderPoint: 90 })
})

test('an order is whole drums, one at least', () => {
  // √(2 · 3650 · 60 / 1) = 661.8; 3 drums cost 60·3650/600 + 300 = 665, 4 cost 60·3650/800 + 400 = 673.75
  expect(reorder(drums)).toMatchObject({ packs: 3, orderQuantity: 600 })
  expect(reorder({ ...drums, orderCost: 0 })).toMatchObject({ packs: 1, orderQuantity: 200 })
  expect(reorder({ ...drums, packSize: 5000 })).toMatchObject({ packs: 1, orderQuantity: 5000 })
})

test('by the litre the order is the cheapest quantity itself', () => {
  const { economicQuantity, orderQuantity, packs } = reorder({ ...drums, packSize: null })
  expect(economicQuantity).toBeCloseTo(661.816, 3)
  expect(orderQuantity).toBe(economicQuantity)
  expect(packs).toBeNull()
})

test('what is not used is not ordered', () => {
  expect(reorder({ ...drums, dailyMean: 0, dailySd: 0 })).toMatchObject({ reorderPoint: 0, orderQuantity: 0, packs: 0 })
})

test('without costs there is a reorder point and no quantity', () => {
  expect(reorder({ ...drums, orderCost: null })).toMatchObject({
    economicQuantity: null,
    orderQuantity: null,
    packs: null,
  })
})

test.each<[string, Partial<Replenishment>]>([
  ['dailyMean is -1', { dailyMean: -1 }],
  ['dailySd is NaN', { dailySd: Number.NaN }],
  ['leadDays is -1', { leadDays: -1 }],
  ['leadSd is -1', { leadSd: -1 }],
  ['service is 0.4', { service: 0.4 }],
  ['service is 1', { service: 1 }],
  ['packSize is 0', { packSize: 0 }],
  ['orderCost is -1', { orderCost: -1 }],
  ['holdingCostPerYear is 0', { holdingCostPerYear: 0 }],
])('%s is refused', (message, change) => {
  expect(() => reorder({ ...drums, ...change })).toThrow(message)
})

test('more service never lowers the reorder point', () => {
  const share = fc.double({ min: 0.5, max: 0.9999, noNaN: true })
  fc.assert(
    fc.property(share, share, (a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)]
      expect(reorder({ ...drums, service: high }).reorderPoint).toBeGreaterThanOrEqual(
        reorder({ ...drums, service: low }).reorderPoint - 1e-9,
      )
    }),
  )
})
