import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type EwmaOptions, ewmaChart } from './ewma.ts'

test('the average moves by its share of each value, from the target on', () => {
  expect(ewmaChart([12, 12, 8], { target: 10, sd: 1, lambda: 0.5 }).points).toEqual([11, 11.5, 9.75])
})

test('with a share of 1 it is a chart of single values', () => {
  const chart = ewmaChart([12, 14, 6], { target: 10, sd: 1, lambda: 1, width: 3 })
  expect(chart).toMatchObject({ points: [12, 14, 6], upper: [13, 13, 13], lower: [7, 7, 7] })
  expect(chart.signals).toEqual([
    { index: 1, rule: 'upper' },
    { index: 2, rule: 'lower' },
  ])
})

test('limits are narrow at first and soon steady', () => {
  // at the first value λ · sd · width = 0.2 × 3; in the end √(0.2 / 1.8) × 3 = 1
  const { upper, lower } = ewmaChart(Array(100).fill(0), { target: 0, sd: 1 })
  expect(upper[0]).toBeCloseTo(0.6, 12)
  expect(upper[99]).toBeCloseTo(1, 9)
  expect(lower[99]).toBeCloseTo(-1, 9)
})

test('a point on its limit is no signal', () => {
  const { upper } = ewmaChart([0], { target: 0, sd: 1 })
  expect(ewmaChart([3], { target: 0, sd: 1 }).points[0]).toBeCloseTo(upper[0]!, 12)
  expect(ewmaChart([2.999], { target: 0, sd: 1 }).signals).toEqual([])
  expect(ewmaChart([3.001], { target: 0, sd: 1 }).signals).toHaveLength(1)
})

test('centre and sd come from the values where they are not given', () => {
  // ranges 2, 2: 2 / 1.128
  expect(ewmaChart([10, 12, 10])).toMatchObject({ centre: 32 / 3, sd: expect.closeTo(1.77305, 5) })
})

test.each<[string, EwmaOptions]>([
  ['lambda is 0, expected above 0', { lambda: 0 }],
  ['lambda is 1.1', { lambda: 1.1 }],
  ['width is -3', { width: -3 }],
  ['sd is -1', { sd: -1 }],
])('%s is refused', (message, options) => {
  expect(() => ewmaChart([1, 2, 3], options)).toThrow(message)
})

test('the average never leaves the range of target and values', () => {
  const value = fc.double({ min: -100, max: 100, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 1 }),
      value,
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      (values, target, lambda) => {
        const { points } = ewmaChart(values, { target, sd: 1, lambda })
        const [low, high] = [Math.min(target, ...values), Math.max(target, ...values)]
        for (const point of points) {
          expect(point).toBeGreaterThanOrEqual(low - 1e-9)
          expect(point).toBeLessThanOrEqual(high + 1e-9)
        }
      },
    ),
  )
})
