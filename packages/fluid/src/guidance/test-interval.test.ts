import fc from 'fast-check'
import { expect, test } from 'vitest'
import { testInterval } from './test-interval.ts'

test.each<[number | null, number | null, object]>([
  [null, null, { outcome: 'none' }],
  [7, null, { outcome: 'every', days: 7, level: 'guidance', refused: null }],
  [null, 14, { outcome: 'every', days: 14, level: 'shop', refused: null }],
  [7, 3, { outcome: 'every', days: 3, level: 'shop', refused: null }],
  [7, 7, { outcome: 'every', days: 7, level: 'guidance', refused: null }],
  [7, 14, { outcome: 'every', days: 7, level: 'guidance', refused: 14 }],
])('guidance %s and shop %s', (guidance, shop, expected) => {
  expect(testInterval({ guidance, shop })).toEqual(expected)
})

test('an interval under a day is refused', () => {
  expect(() => testInterval({ guidance: 0, shop: null })).toThrow('guidance is 0')
  expect(() => testInterval({ guidance: 7, shop: Number.NaN })).toThrow('shop is NaN')
})

test('whatever the shop asks, what guidance sets is never lengthened', () => {
  const days = fc.integer({ min: 1, max: 400 })
  fc.assert(
    fc.property(days, fc.option(days), (guidance, shop) => {
      const interval = testInterval({ guidance, shop })
      expect(interval.outcome === 'every' && interval.days <= guidance).toBe(true)
    }),
  )
})
