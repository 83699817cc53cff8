import { expect, test } from 'vitest'
import { axisOf, decimalsOf } from './scale.ts'

test('an axis holds its values in whole steps of 1, 2 or 5', () => {
  expect(axisOf([1.5, 15])).toMatchObject({ from: 0, to: 15, step: 5, ticks: [0, 5, 10, 15] })
  expect(axisOf([262, 271])).toMatchObject({ from: 262, to: 272, step: 2 })
  expect(axisOf([0, 0.6]).ticks).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6])
})

test('an axis from zero begins there', () => {
  expect(axisOf([262, 271], { zero: true, most: 4 })).toMatchObject({ from: 0, to: 300, step: 100 })
})

test('one value alone and none at all still make an axis', () => {
  const single = axisOf([5])
  expect(single.to).toBeGreaterThan(single.from)
  expect(axisOf([])).toMatchObject({ from: 0, to: 1 })
  expect(axisOf([0]).to).toBeGreaterThan(0)
})

test('a step says how many decimals its ticks need', () => {
  expect([0.05, 0.1, 0.2, 1, 5, 100].map(decimalsOf)).toEqual([2, 1, 1, 0, 0, 0])
})
