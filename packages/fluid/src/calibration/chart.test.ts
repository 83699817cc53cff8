import { expect, test } from 'vitest'
import { percentFromChart } from '../refractometer/product-chart.ts'
import { chartFromMixes } from './chart.ts'

test('mixes become the points of a chart that begins at nothing', () => {
  const chart = chartFromMixes([
    { percent: 10, brix: 7 },
    { percent: 5, brix: 3 },
  ])
  expect(chart).toEqual([
    [0, 0],
    [3, 5],
    [7, 10],
  ])
  expect(percentFromChart(chart, 3)).toMatchObject({ percent: 5 })
})

test('repeats are averaged, and plain water is the beginning', () => {
  expect(
    chartFromMixes([
      { percent: 0, brix: 0.1 },
      { percent: 5, brix: 3 },
      { percent: 5, brix: 3.5 },
    ]),
  ).toEqual([
    [0, 0],
    [3.25, 5],
  ])
})

test('not held to zero it begins with the weakest mix', () => {
  const mixes = [
    { percent: 2, brix: 1.5 },
    { percent: 6, brix: 4 },
  ]
  expect(chartFromMixes(mixes, { throughZero: false })).toEqual([
    [1.5, 2],
    [4, 6],
  ])
})

test('readings that fall where the strength rises become one point', () => {
  expect(
    chartFromMixes([
      { percent: 4, brix: 3 },
      { percent: 5, brix: 2.8 },
      { percent: 8, brix: 5 },
    ]),
  ).toEqual([
    [0, 0],
    [expect.closeTo(2.9, 12), 4.5],
    [5, 8],
  ])
})

test('mixes that come to one point are no chart', () => {
  expect(() => chartFromMixes([{ percent: 5, brix: 3 }], { throughZero: false })).toThrow(
    'mixes is 1, expected mixes whose readings rise',
  )
  expect(() => chartFromMixes([{ percent: 5, brix: 96 }])).toThrow('mixes.0.brix is 96')
})
