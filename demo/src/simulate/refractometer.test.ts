import { expect, test } from 'vitest'
import type { FluidDocument } from '../book-document.ts'
import { biasOf, brixOf, percentOf } from './refractometer.ts'

const named = { id: 'f', name: 'F', class: 'synthetic', pricePerLitre: 1, shelfLifeDays: 1, density: 1 } as const
const byFactor: FluidDocument = { ...named, brixFactor: 1.5 }
const byChart: FluidDocument = {
  ...named,
  brixChart: [
    [0, 0],
    [2, 3],
    [4, 8],
  ],
}

test('strength is °Brix times the factor, and back', () => {
  expect(percentOf(byFactor, 4.2)).toBeCloseTo(6.3, 12)
  expect(brixOf(byFactor, 6.3)).toBeCloseTo(4.2, 12)
})

test.each([
  ['on a point of the chart', 3, 2],
  ['between its points: half way from 3 to 8 %', 5.5, 3],
  ['beyond its last: on with the last slope of 2.5 %/°Brix', 10.5, 5],
])('a chart reads straight %s', (_, percent, brix) => {
  expect(brixOf(byChart, percent)).toBeCloseTo(brix, 12)
  expect(percentOf(byChart, brix)).toBeCloseTo(percent, 12)
})

test('tramp oil and salts lift the reading', () => {
  // 2 % × 0.3 + 2 × 500 mg/L × 0.12/1000 = 0.6 + 0.12.
  expect(biasOf({ trampOil: 2, hardness: 500 })).toBeCloseTo(0.72, 12)
})
