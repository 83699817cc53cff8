import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type CusumOptions, cusumChart } from './cusum.ts'

test('sums of excess and of shortfall grow beyond the slack and never fall under 0', () => {
  expect(cusumChart([12, 11, 8, 10], { target: 10, sd: 1 }).points).toEqual([
    { above: 1.5, below: 0 },
    { above: 2, below: 0 },
    { above: 0, below: 1.5 },
    { above: 0, below: 1 },
  ])
})

test('a sum past the limit signals, one on it does not', () => {
  // 2.5 a value at k 0.5: 2, 4, 6 against 5 and against 6
  const values = [12.5, 12.5, 12.5]
  expect(cusumChart(values, { target: 10, sd: 1 }).signals).toEqual([{ index: 2, rule: 'upper' }])
  expect(cusumChart(values, { target: 10, sd: 1, h: 6 }).signals).toEqual([])
  const mirrored = values.map((value) => 20 - value)
  expect(cusumChart(mirrored, { target: 10, sd: 1 }).signals).toEqual([{ index: 2, rule: 'lower' }])
})

test('with an sd, k and h count in it', () => {
  const chart = cusumChart([14], { target: 10, sd: 2, k: 1, h: 4 })
  expect(chart).toMatchObject({ upper: 8, lower: -8, centre: 0, target: 10, points: [{ above: 2, below: 0 }] })
})

test('without an sd, k and h count in the unit of the values', () => {
  const chart = cusumChart([14, 10], { target: 10, k: 1, h: 4 })
  expect(chart).toMatchObject({ upper: 4, points: [{ above: 3, below: 0 }, { above: 2 }] })
})

test('with neither, they are half and five of the sd that the values show', () => {
  // ranges 2: sd 2 / 1.128; mean 11
  const { sd, upper, points } = cusumChart([12, 10])
  expect(sd).toBeCloseTo(1.77305, 5)
  expect(upper).toBeCloseTo(5 * sd, 12)
  expect(points[0]!.above).toBeCloseTo(1 - sd / 2, 12)
})

test.each<[string, CusumOptions]>([
  ['k is -1', { k: -1, sd: 1 }],
  ['h is 0, expected above 0', { h: 0, sd: 1 }],
  ['h is NaN, expected h beside k', { k: 1 }],
  ['k is NaN, expected k beside h', { h: 1 }],
])('%s is refused', (message, options) => {
  expect(() => cusumChart([1, 2], options)).toThrow(message)
})

test('a chart turned upside down has its sums exchanged', () => {
  const values = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1 })
  fc.assert(
    fc.property(values, (values) => {
      const turned = cusumChart(
        values.map((value) => -value),
        { target: 0, sd: 1 },
      )
      const { points } = cusumChart(values, { target: 0, sd: 1 })
      expect(turned.points).toEqual(points.map(({ above, below }) => ({ above: below, below: above })))
    }),
  )
})
