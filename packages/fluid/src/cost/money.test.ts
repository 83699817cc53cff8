import fc from 'fast-check'
import { expect, test } from 'vitest'
import { microCents, toCents, wholeParts } from './money.ts'

test('a bucket of tap water costs 4.8 cents, and none of it is lost before the sum', () => {
  expect(microCents(12, 0.004)).toBe(4_800_000)
  expect(toCents(4_800_000)).toBe(5)
  expect(toCents(10 * 4_800_000)).toBe(48)
})

test('half a cent is rounded up, less is not', () => {
  expect(toCents(500_000)).toBe(1)
  expect(toCents(499_999)).toBe(0)
})

test('what is beyond all measure has no cost', () => {
  expect(microCents(1e9, 1)).toBe(null)
  expect(microCents(1e308, 1e308)).toBe(null)
  expect(microCents(9e7, 1)).toBe(9e15)
})

test.each([
  ['amount is -1', -1, 1],
  ['price is NaN', 1, Number.NaN],
])('%s is refused', (message, amount, price) => {
  expect(() => microCents(amount, price)).toThrow(message)
})

test('a sum of millionths does not depend on its order', () => {
  const amounts = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 2, maxLength: 40 })
  fc.assert(
    fc.property(amounts, (litres) => {
      const sum = (list: number[]) => list.reduce((total, one) => total + microCents(one, 0.013)!, 0)
      expect(sum(litres)).toBe(sum(litres.toReversed()))
    }),
  )
})

test('parts rounded to whole units add up to their rounded sum, and each is off by less than one', () => {
  // 33.4 + 33.3 + 33.3 = 100: the largest remainder gets the unit that is missing.
  expect(wholeParts([3340, 3330, 3330], 100)).toEqual([3400, 3300, 3300])
  expect(wholeParts([], 100)).toEqual([])
  fc.assert(
    fc.property(fc.array(fc.nat(1e6), { maxLength: 8 }), (parts) => {
      const whole = wholeParts(parts, 100)
      const total = (list: number[]) => list.reduce((sum, part) => sum + part, 0)
      expect(total(whole)).toBe(100 * Math.round(total(parts) / 100))
      for (const [i, part] of whole.entries()) expect(Math.abs(part - parts[i]!)).toBeLessThan(100)
    }),
  )
  expect(() => wholeParts([-1], 100)).toThrow('parts.0 is -1')
  expect(() => wholeParts([1], 0)).toThrow('step is 0')
})
