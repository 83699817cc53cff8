import { expect, test } from 'vitest'
import { type FirstWater, firstWater } from './first-water.ts'

const water = (id: string, kind: FirstWater['kind'], hardness: number | null): FirstWater => ({ id, kind, hardness })
const tap = water('tap', 'tap', 400)
const soft = water('soft', 'softened', 10)
const di = water('di', 'deionised', 10)
const limits = { low: 100, high: 200, strength: 0 }

test('the softest water that fits the limits is taken, since every fill adds to it', () => {
  const waters = [water('a', 'tap', 180), water('b', 'well', 120), di]
  expect(firstWater(waters, limits)).toEqual({ outcome: 'fits', water: 'b', hardness: 120 })
})

test('the concentrate thins the water’s minerals', () => {
  // 110 × 0.9 = 99, under 100
  expect(firstWater([water('a', 'tap', 110)], { ...limits, strength: 10 })).toMatchObject({ outcome: 'by-kind' })
})

test('one too hard and one too soft are blended to the lower limit', () => {
  // share × 400 + (1 − share) × 10 = 100 → share = 90 / 390
  expect(firstWater([tap, di], limits)).toEqual({
    outcome: 'blend',
    water: 'tap',
    with: 'di',
    share: expect.closeTo(90 / 390, 12),
    hardness: 100,
  })
})

test('softened water is never chosen', () => {
  expect(firstWater([soft, di], { low: null, high: null, strength: 5 })).toMatchObject({ water: 'di' })
  expect(firstWater([soft], limits)).toEqual({ outcome: 'none' })
})

test('without limits the shop’s tap water is taken, as the trade does', () => {
  const none = { low: null, high: null, strength: 0 }
  expect(firstWater([di, tap], none)).toEqual({ outcome: 'by-kind', water: 'tap', hardness: 400, limited: false })
  expect(firstWater([water('x', null, null)], none)).toMatchObject({ water: 'x', hardness: null })
})

test('where no water reaches the limits that is said', () => {
  expect(firstWater([tap], limits)).toEqual({ outcome: 'by-kind', water: 'tap', hardness: 400, limited: true })
})
