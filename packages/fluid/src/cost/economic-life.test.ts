import fc from 'fast-check'
import { expect, test } from 'vitest'
import { economicLife, type LifeQuestion } from './economic-life.ts'

// √(2 × 400 / 0.02) = √40 000 = 200; 2 + √(2 × 400 × 0.02) = 2 + 4.
const usual: LifeQuestion = { changeCost: 400, running: { start: 2, growth: 0.02 } }

test('a charge lasts the longer, the dearer its change and the slower its cost grows', () => {
  expect(economicLife(usual)).toMatchObject({ outcome: 'change', days: 200, costPerDay: 6 })
  expect(economicLife({ ...usual, changeCost: 1600 }).days).toBe(400)
  expect(economicLife({ ...usual, running: { start: 2, growth: 0.08 } }).days).toBe(100)
})

test('what a fresh charge costs a day does not move the day of the change', () => {
  expect(economicLife({ ...usual, running: { start: 50, growth: 0.02 } })).toMatchObject({ days: 200, costPerDay: 54 })
})

test('a cost that does not grow is no reason to change, ever', () => {
  const kept = economicLife({ ...usual, running: { start: 2, growth: 0 } })
  expect(kept).toMatchObject({ outcome: 'never', days: null, costPerDay: 2 })
  // 400 / 365 + 2
  expect(kept.curve.find(({ days }) => days === 365)!.costPerDay).toBeCloseTo(3.0959, 4)
})

test('a charge that may spoil is changed sooner, and one that spoils at any age alike never for that', () => {
  const spoiling = { scale: 300, shape: 3, cost: 1200 }
  const found = economicLife({ ...usual, spoiling })
  expect(found.days!).toBeLessThan(200)
  expect(found.costPerDay).toBeGreaterThan(6)
  const steady = { changeCost: 400, running: { start: 2, growth: 0 } }
  // At any age alike (shape 1) the mean life is 300 days: 2 + 1200 / 300.
  const never = economicLife({ ...steady, spoiling: { ...spoiling, shape: 1 } })
  expect(never.outcome).toBe('never')
  expect(never.costPerDay).toBeCloseTo(6, 6)
  expect(economicLife({ ...steady, spoiling: { ...spoiling, cost: 400 } }).outcome).toBe('never')
})

test.each<[string, Partial<LifeQuestion>]>([
  ['changeCost is 0, expected above 0', { changeCost: 0 }],
  ['running.start is -1', { running: { start: -1, growth: 0 } }],
  ['running.growth is -0.1', { running: { start: 1, growth: -0.1 } }],
  ['spoiling.shape is 0.9, expected at least 1', { spoiling: { scale: 10, shape: 0.9, cost: 500 } }],
  ['spoiling.cost is 399, expected at least 400', { spoiling: { scale: 10, shape: 2, cost: 399 } }],
  ['spoiling.scale is 0', { spoiling: { scale: 0, shape: 2, cost: 500 } }],
])('%s is refused', (message, change) => {
  expect(() => economicLife({ ...usual, ...change })).toThrow(message)
})

test('of a shape just above 1 the sums err alike at every age: none is cheaper by rounding', () => {
  const found = economicLife({
    changeCost: 0.28878675916795843,
    running: { start: 0.01, growth: 0.0001 },
    spoiling: { scale: 10, shape: 1.0511343009792802, cost: 0.57757351833591686 },
  })
  for (const { costPerDay } of found.curve) expect(costPerDay).toBeGreaterThan(found.costPerDay * (1 - 1e-9))
})

test('no age of the curve costs less than the one that is named', () => {
  const amount = fc.double({ min: 0.01, max: 1e4, noNaN: true })
  const spoiling = fc.option(
    fc.record({
      scale: fc.double({ min: 10, max: 2000, noNaN: true }),
      shape: fc.double({ min: 1, max: 8, noNaN: true }),
    }),
  )
  fc.assert(
    fc.property(
      amount,
      amount,
      fc.double({ min: 1e-4, max: 10, noNaN: true }),
      spoiling,
      (change, start, growth, may) => {
        const found = economicLife({
          changeCost: change,
          running: { start, growth },
          spoiling: may === null ? undefined : { ...may, cost: 2 * change },
        })
        if (found.outcome === 'never') throw new Error('a growing cost has an end')
        for (const { costPerDay } of found.curve) expect(costPerDay).toBeGreaterThan(found.costPerDay * (1 - 1e-6))
      },
    ),
    { numRuns: 60 },
  )
})
