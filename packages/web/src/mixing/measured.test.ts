import { expect, test } from 'vitest'
import { percentOf, readMeasured, scaleOf } from './measured.ts'

const fluid = (more: object) => ({ id: 'f', name: 'Semi', ...more })

test('the factor is the last that began by the day, else the fluid’s own; one for a lot alone does not count', () => {
  const dated = fluid({
    brixFactor: 1.5,
    factors: [
      { from: '2026-03-01', brixFactor: 1.7 },
      { from: '2026-01-01', brixFactor: 1.6 },
      { from: '2026-02-01', lot: '7', brixFactor: 9 },
    ],
  })
  expect(scaleOf(dated, '2025-12-31')).toEqual({ factor: 1.5 })
  expect(scaleOf(dated, '2026-01-01')).toEqual({ factor: 1.6 })
  expect(scaleOf(dated, '2026-02-28')).toEqual({ factor: 1.6 })
  expect(scaleOf(dated, '2026-03-01')).toEqual({ factor: 1.7 })
})

test('a chart wins over a factor, and a fluid without either has no scale', () => {
  const chart = [
    [0, 0],
    [10, 15],
  ]
  expect(scaleOf(fluid({ brixFactor: 1.5, brixChart: chart }), '2026-01-01')).toEqual({ chart })
  expect(scaleOf(fluid({}), '2026-01-01')).toBeNull()
  expect(scaleOf(undefined, '2026-01-01')).toBeNull()
})

test('what was measured becomes percent, and what no scale reaches is refused', () => {
  expect(readMeasured('7,5', 'percent', null)).toEqual({ value: 7.5 })
  expect(readMeasured('4', 'brix', { factor: 1.5 })).toEqual({ value: 6 })
  expect(readMeasured('', 'brix', null)).toEqual({ value: null })
  expect(readMeasured('4', 'brix', null)).toHaveProperty('fault')
  expect(readMeasured('80', 'brix', { factor: 1.5 })).toHaveProperty('fault')
  expect(percentOf(80, { factor: 1.5 })).toBeNull()
})
