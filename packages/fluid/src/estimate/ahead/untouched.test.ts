import fc from 'fast-check'
import { expect, test } from 'vitest'
import { packShopEstimate } from '../pack.ts'
import { everyDay, mondayToFriday, reading, setup, shopOf, sumpOf } from '../testing.ts'
import { untouched } from './untouched.ts'

/** A sump whose last reading fits badly, so that several courses are followed. */
const doubtful = (calendar = everyDay) =>
  shopOf(
    [
      setup('s', {}, 4),
      ...[4.3, 7.3, 10.3, 13.3].map((at) => reading('s', at, { brix: 8, seen: 190 })),
      reading('s', 14.3, { brix: 9, seen: 200 }),
    ],
    { calendar },
  )

test('level and strength come to the same, to the last bit, whether minerals are followed or not', () => {
  expect(sumpOf(doubtful()).branches.length).toBeGreaterThan(1)
  fc.assert(
    fc.property(
      fc.constantFrom(everyDay, mondayToFriday),
      fc.double({ min: 14.3, max: 60, noNaN: true }),
      fc.integer({ min: 0, max: 90 }),
      (calendar, at, days) => {
        const shop = doubtful(calendar)
        const whole = untouched(shop, 's', at).mixAndMineralsIn(days)
        const { strength, volume } = untouched(shop, 's', at).mixIn(days)
        expect([strength, volume]).toEqual([whole.strength, whole.volume])
      },
    ),
    { numRuns: 50 },
  )
})

test('a day is followed once, and the answer does not hang on what was asked before', () => {
  const one = untouched(doubtful(), 's', 15)
  expect(one.mixIn(7)).toBe(one.mixIn(7))
  const other = untouched(doubtful(), 's', 15)
  for (const days of [42, 3, 0]) other.mixIn(days)
  expect(other.mixAndMineralsIn(7)).toMatchObject(one.mixIn(7))
  expect(other.mixIn(7)).toMatchObject(one.mixIn(7))
})

test('what is asked of a time before its records is told of the time of the last', () => {
  expect(untouched(doubtful(), 's', 2).now).toBe(14.3)
  expect(untouched(doubtful(), 's', 2).mixIn(3)).toEqual(untouched(doubtful(), 's', 14.3).mixIn(3))
})

test('to ask changes nothing', () => {
  const shop = doubtful()
  const before = packShopEstimate(shop)
  const asked = untouched(shop, 's', 16)
  for (const days of [0, 1, 5, 42]) asked.mixAndMineralsIn(days)
  asked.mixIn(30)
  expect(packShopEstimate(shop)).toEqual(before)
})

test('of a sump that nobody described nothing can be asked', () => {
  expect(() => untouched(doubtful(), 'nowhere', 10)).toThrow(/no sump nowhere/)
})
