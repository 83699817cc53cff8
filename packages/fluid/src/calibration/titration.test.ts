import { expect, test } from 'vitest'
import { titratedConcentration } from './titration.ts'

test('drops times the factor are the concentration', () => {
  expect(titratedConcentration({ amount: 8, factor: 0.9 }).mean).toBeCloseTo(7.2, 12)
})

test('what the water alone takes is taken off, and never gives less than nothing', () => {
  expect(titratedConcentration({ amount: 8, factor: 0.9, blank: 2 }).mean).toBeCloseTo(5.4, 12)
  expect(titratedConcentration({ amount: 1, factor: 0.9, blank: 2 }).mean).toBe(0)
})

test('twice the sample takes twice the drops', () => {
  expect(titratedConcentration({ amount: 16, factor: 0.9, sampleShare: 2 }).mean).toBeCloseTo(7.2, 12)
})

// One drop is a step: 0.9 × 1/√12; with a blank √2 of it; a larger sample shares it out; the factor's own 0.05 × 8.
test('the doubt is that of the end point, the blank and the factor', () => {
  const step = 0.9 / Math.sqrt(12)
  expect(titratedConcentration({ amount: 8, factor: 0.9 }).sd).toBeCloseTo(step, 12)
  expect(titratedConcentration({ amount: 8, factor: 0.9, blank: 2 }).sd).toBeCloseTo(step * Math.SQRT2, 12)
  expect(titratedConcentration({ amount: 16, factor: 0.9, sampleShare: 2 }).sd).toBeCloseTo(step / 2, 12)
  expect(titratedConcentration({ amount: 8, factor: 0.9, resolution: 0, factorSd: 0.05 }).sd).toBeCloseTo(0.4, 12)
})

test('the interval is central and not below nothing', () => {
  const { low90, high90, mean, sd } = titratedConcentration({ amount: 8, factor: 0.9 })
  expect([low90, high90]).toEqual([mean - 1.6448536269514722 * sd, mean + 1.6448536269514722 * sd])
  expect(titratedConcentration({ amount: 0, factor: 0.9 }).low90).toBe(0)
})

test.each([
  ['amount', { amount: -1 }],
  ['factor', { factor: 0 }],
  ['blank', { blank: -1 }],
  ['sampleShare', { sampleShare: 0 }],
  ['resolution', { resolution: -1 }],
  ['factorSd', { factorSd: Number.NaN }],
])('%s out of its range is refused by name', (name, more) => {
  expect(() => titratedConcentration({ amount: 8, factor: 0.9, ...more })).toThrow(new RegExp(`^${name} is`))
})
