import fc from 'fast-check'
import { expect, test } from 'vitest'
import { alligation, amountToReach, fillUpStrength } from './alligation.ts'

test('two strengths make a third in the parts by which they miss it', () => {
  // 10 and 2 to 4: 2 parts of the first, 6 of the second
  expect(alligation({ first: 10, second: 2, wanted: 4 })).toEqual({ outcome: 'parts', first: 0.25, second: 0.75 })
  expect(alligation({ first: 2, second: 10, wanted: 4 })).toEqual({ outcome: 'parts', first: 0.75, second: 0.25 })
})

test('a strength outside the two cannot be mixed from them', () => {
  expect(alligation({ first: 10, second: 2, wanted: 10.1 })).toEqual({ outcome: 'unreachable', low: 2, high: 10 })
  expect(alligation({ first: 10, second: 2, wanted: 10 })).toEqual({ outcome: 'parts', first: 1, second: 0 })
  expect(alligation({ first: 6, second: 6, wanted: 6 })).toEqual({ outcome: 'parts', first: 0.5, second: 0.5 })
  expect(alligation({ first: 6, second: 6, wanted: 7 })).toEqual({ outcome: 'unreachable', low: 6, high: 6 })
})

test('what is added brings a volume to its target', () => {
  expect(amountToReach({ volume: 100, concentration: 10, strength: 0, target: 5 })).toEqual({
    outcome: 'amount',
    add: 100,
    total: 200,
  })
})

test('at the target nothing is to be added', () => {
  expect(amountToReach({ volume: 100, concentration: 5, strength: 5, target: 5 })).toEqual({
    outcome: 'amount',
    add: 0,
    total: 100,
  })
})

test('a target at or beyond the strength that is added is never reached', () => {
  expect(amountToReach({ volume: 100, concentration: 4, strength: 6, target: 6 })).toEqual({
    outcome: 'unreachable',
    low: 4,
    high: 6,
  })
  expect(amountToReach({ volume: 100, concentration: 4, strength: 6, target: 3 })).toMatchObject({
    outcome: 'unreachable',
  })
})

test('a volume is filled up with the strength that meets the target', () => {
  // 8 × 100 in all, 6 × 60 there: 440 / 40 = 11 %
  expect(fillUpStrength({ volume: 60, concentration: 6, total: 100, target: 8 })).toEqual({
    outcome: 'strength',
    add: 40,
    strength: 11,
  })
})

test('where neither water nor neat concentrate meets the target, the reach is given', () => {
  // 90 L at 10 % and 10 L of anything: 9 to 19 %
  expect(fillUpStrength({ volume: 90, concentration: 10, total: 100, target: 8 })).toEqual({
    outcome: 'unreachable',
    low: 9,
    high: 19,
  })
  expect(fillUpStrength({ volume: 90, concentration: 10, total: 100, target: 9 })).toMatchObject({ strength: 0 })
  expect(fillUpStrength({ volume: 90, concentration: 10, total: 100, target: 19 })).toMatchObject({ strength: 100 })
})

test.each([
  ['first is 101', () => alligation({ first: 101, second: 2, wanted: 4 })],
  ['wanted is NaN', () => alligation({ first: 1, second: 2, wanted: Number.NaN })],
  ['volume is -1', () => amountToReach({ volume: -1, concentration: 4, strength: 6, target: 5 })],
  ['target is -1', () => amountToReach({ volume: 1, concentration: 4, strength: 6, target: -1 })],
  ['total is 60, expected above 60', () => fillUpStrength({ volume: 60, concentration: 6, total: 60, target: 8 })],
])('%s is refused', (message, mix) => {
  expect(mix).toThrow(message)
})

const percent = fc.double({ min: 0, max: 100, noNaN: true })
const litres = fc.double({ min: 1e-3, max: 1e5, noNaN: true })

test('whenever parts are given, they make the strength wanted', () => {
  fc.assert(
    fc.property(percent, percent, percent, (first, second, wanted) => {
      const mix = alligation({ first, second, wanted })
      if (mix.outcome === 'parts') expect(mix.first * first + mix.second * second).toBeCloseTo(wanted, 9)
      else expect(wanted < Math.min(first, second) || wanted > Math.max(first, second)).toBe(true)
    }),
  )
})

test('whenever an amount is given, adding it reaches the target', () => {
  fc.assert(
    fc.property(litres, percent, percent, percent, (volume, concentration, strength, target) => {
      const amount = amountToReach({ volume, concentration, strength, target })
      if (amount.outcome !== 'amount' || !Number.isFinite(amount.add)) return
      expect(amount.add).toBeGreaterThanOrEqual(0)
      expect((volume * concentration + amount.add * strength) / amount.total).toBeCloseTo(target, 7)
    }),
  )
})

test('whenever a strength to fill up with is given, it can be made and reaches the target', () => {
  fc.assert(
    fc.property(litres, percent, litres, percent, (volume, concentration, more, target) => {
      const fill = fillUpStrength({ volume, concentration, total: volume + more, target })
      if (fill.outcome !== 'strength') return
      expect(fill.strength).toBeGreaterThanOrEqual(0)
      expect(fill.strength).toBeLessThanOrEqual(100)
      expect((volume * concentration + fill.add * fill.strength) / (volume + more)).toBeCloseTo(target, 7)
    }),
  )
})
