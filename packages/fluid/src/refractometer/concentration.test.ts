import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type BrixReading, brixFromConcentration, concentrationFromBrix } from './concentration.ts'
import type { ProductChart } from './product-chart.ts'

const chart: ProductChart = [
  [0, 0],
  [5, 10],
  [10, 20],
]

test('the concentration is the reading less that of the water, times the factor', () => {
  expect(concentrationFromBrix({ brix: 4.2, factor: 1.6, waterBrix: 0.2 }).concentration).toBeCloseTo(6.4, 12)
})

test('a sample diluted 1 : 1 counts double', () => {
  expect(concentrationFromBrix({ brix: 2.1, factor: 1.5, diluted: 2 }).concentration).toBeCloseTo(6.3, 12)
})

test('a scale with steps of 0.2 leaves a standard deviation of 0.2 / √12 of reading', () => {
  // 0.2 / 3.4641 = 0.057735, times the factor 1.6: 0.092376; times 1.6449 either way: 0.15195
  const { sd, low90, high90 } = concentrationFromBrix({ brix: 5, factor: 1.6 })
  expect(sd).toBeCloseTo(0.092376, 6)
  expect(low90).toBeCloseTo(8 - 0.15195, 4)
  expect(high90).toBeCloseTo(8 + 0.15195, 4)
})

test('a zero that was read bears the same doubt again', () => {
  const without = concentrationFromBrix({ brix: 5, factor: 1.6 })
  const withZero = concentrationFromBrix({ brix: 5, factor: 1.6, waterBrix: 0.2 })
  expect(withZero.sd / without.sd).toBeCloseTo(Math.SQRT2, 12)
})

test('a zero of 0 is an instrument set to zero, given or not', () => {
  expect(concentrationFromBrix({ brix: 5, factor: 1.6, waterBrix: 0 })).toEqual(
    concentrationFromBrix({ brix: 5, factor: 1.6 }),
  )
})

test('the doubt of the factor counts with the reading', () => {
  // √((1.6 × 0)² + (5 × 0.04)²) = 0.2
  expect(concentrationFromBrix({ brix: 5, factor: 1.6, resolution: 0, factorSd: 0.04 }).sd).toBeCloseTo(0.2, 12)
})

test('dilution doubles the doubt of the reading with the result', () => {
  const plain = concentrationFromBrix({ brix: 3, factor: 1.5 })
  const diluted = concentrationFromBrix({ brix: 3, factor: 1.5, diluted: 2 })
  expect(diluted.sd).toBeCloseTo(2 * plain.sd, 12)
})

test('an interval never begins below nothing', () => {
  const { concentration, low90, high90 } = concentrationFromBrix({ brix: 0.05, factor: 1.6 })
  expect(low90).toBe(0)
  expect(high90).toBeGreaterThan(concentration)
})

test('a reading below the water is no concentrate at all', () => {
  expect(concentrationFromBrix({ brix: 0.2, factor: 1.6, waterBrix: 0.4 })).toMatchObject({
    concentration: 0,
    low90: 0,
  })
})

test('a chart takes the place of the factor and wins over one', () => {
  expect(concentrationFromBrix({ brix: 3, chart, factor: 1 })).toMatchObject({
    outcome: 'concentration',
    concentration: 6,
  })
})

test('on a chart its slope turns the doubt of the reading into that of the concentration', () => {
  // slope 2, 0.2 / √12
  expect(concentrationFromBrix({ brix: 3, chart })).toMatchObject({ sd: expect.closeTo(0.11547, 5) })
})

test('a reading off the chart gives no concentration', () => {
  expect(concentrationFromBrix({ brix: 10.4, waterBrix: 0.2, chart })).toMatchObject({
    outcome: 'off-chart',
    found: expect.closeTo(10.2, 12),
    high: 10,
  })
})

test('for a target it tells what must be read', () => {
  expect(brixFromConcentration({ concentration: 8, factor: 1.6 })).toEqual({ outcome: 'brix', brix: 5 })
  expect(brixFromConcentration({ concentration: 8, factor: 2, waterBrix: 0.5, diluted: 2 })).toEqual({
    outcome: 'brix',
    brix: 2.5,
  })
  expect(brixFromConcentration({ concentration: 21, chart })).toMatchObject({
    outcome: 'off-chart',
    quantity: 'percent',
  })
})

test.each<[string, BrixReading]>([
  ['brix is -0.1', { brix: -0.1, factor: 1 }],
  ['brix is 95.1', { brix: 95.1, factor: 1 }],
  ['brix is NaN', { brix: Number.NaN, factor: 1 }],
  ['factor is 0, expected above 0', { brix: 5, factor: 0 }],
  ['waterBrix is -1', { brix: 5, factor: 1, waterBrix: -1 }],
  ['resolution is -0.2', { brix: 5, factor: 1, resolution: -0.2 }],
  ['factorSd is -1', { brix: 5, factor: 1, factorSd: -1 }],
  ['diluted is 0.5, expected at least 1', { brix: 5, factor: 1, diluted: 0.5 }],
])('%s is refused', (message, reading) => {
  expect(() => concentrationFromBrix(reading)).toThrow(message)
})

test('what is to be read for a concentration gives that concentration', () => {
  const factor = fc.double({ min: 0.5, max: 4, noNaN: true })
  const percent = fc.double({ min: 0, max: 20, noNaN: true })
  const zero = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(factor, percent, zero, fc.constantFrom(1, 2), (factor, concentration, waterBrix, diluted) => {
      const { brix } = brixFromConcentration({ concentration, factor, waterBrix, diluted })
      expect(concentrationFromBrix({ brix, factor, waterBrix, diluted }).concentration).toBeCloseTo(concentration, 11)
    }),
  )
})
