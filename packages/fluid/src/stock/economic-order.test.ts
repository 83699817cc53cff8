import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cheapestPacks, discountedOrder, economicOrder, yearlyOrderCost } from './economic-order.ts'

const costs = { yearly: 1000, orderCost: 10, holdingCostPerYear: 0.5 }

test('at the cheapest size ordering costs as much as keeping', () => {
  expect(economicOrder(costs)).toBe(200)
  expect(yearlyOrderCost(200, costs)).toBe(100)
  expect(yearlyOrderCost(100, costs)).toBe(125)
  expect(yearlyOrderCost(400, costs)).toBe(125)
})

test('no count of packs is cheaper than the one given', () => {
  const amount = fc.double({ min: 1, max: 2000, noNaN: true })
  fc.assert(
    fc.property(amount, amount, amount, (packSize, yearly, orderCost) => {
      const some = { yearly, orderCost, holdingCostPerYear: 1 }
      const best = cheapestPacks(packSize, some)
      const costOf = (packs: number) => yearlyOrderCost(packs * packSize, some)
      expect(best).toBeGreaterThanOrEqual(1)
      if (best > 1) expect(costOf(best)).toBeLessThanOrEqual(costOf(best - 1) * (1 + 1e-12))
      expect(costOf(best)).toBeLessThanOrEqual(costOf(best + 1) * (1 + 1e-12))
    }),
  )
})

test('a discount is taken where it saves more than keeping so much costs', () => {
  const prices = [
    { from: 500, price: 4 },
    { from: 0, price: 5 },
  ]
  // 200 at 5: 5000 + 50 + 100 = 5150 (holding 1 a litre, quantity √(2·1000·10/1) = 141.4: 5000 + 141.42); 500 at 4: 4000 + 20 + 200
  expect(discountedOrder({ yearly: 1000, orderCost: 10, holdingShare: 0.2, prices })).toEqual({
    quantity: 500,
    costPerYear: 4220,
    price: 4,
  })
  const steep = [
    { from: 0, price: 5 },
    { from: 50_000, price: 4.9 },
  ]
  expect(discountedOrder({ yearly: 1000, orderCost: 10, holdingShare: 0.2, prices: steep }).price).toBe(5)
})

test('prices that do not begin at 0, and costs that are none, are refused', () => {
  const asked = { yearly: 1000, orderCost: 10, holdingShare: 0.2 }
  expect(() => discountedOrder({ ...asked, prices: [] })).toThrow('prices[0].from')
  expect(() => discountedOrder({ ...asked, prices: [{ from: 1, price: 2 }] })).toThrow('prices[0].from is 1')
  expect(() => discountedOrder({ ...asked, prices: [{ from: 0, price: 0 }] })).toThrow('price is 0')
  expect(() => economicOrder({ ...costs, holdingCostPerYear: 0 })).toThrow('holdingCostPerYear is 0')
  expect(() => yearlyOrderCost(0, costs)).toThrow('quantity is 0')
  expect(() => cheapestPacks(0, costs)).toThrow('packSize is 0')
})
