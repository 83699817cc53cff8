/**
 * What rinses leave behind.
 *
 * Batch rinses: plain mass balance, 10 L held back. Tolerance: half of the last digit given.
 * Running rinses: metal-finishing rinse arithmetic (1 gal/h of drag-in with 99 gal/h of water is 100 : 1; with 2,000 gal/h 2,001 : 1, which takes
 * 10 oz/gal to 0.005), read in a copy. Counter-flow (r^(n+1) − 1)/(r − 1): US EPA 625/8-82-008, formula from memory: r = 10 gives 11, 111, 1111.
 */
import { expect, test } from 'vitest'
import { counterFlowDilution, flushedFraction, rinse } from '../packages/fluid/src/index.ts'

test.each([
  [1, 5, 12],
  [2, 0.25, 12],
  [3, 0.0125, 12],
])('10 L held back and filled to 200 L, %d times, leave %d percent', (rinses, percent, digits) => {
  const { residualFraction } = rinse({ heldBack: 10, rinseVolume: 190, rinses, concentration: 100 })
  expect(100 * residualFraction).toBeCloseTo(percent, digits)
})

test.each([
  [1, 4.762, 3],
  [2, 0.2268, 4],
  [3, 0.0108, 4],
])('10 L held back and 200 L added, %d times, leave %d percent', (rinses, percent, digits) => {
  const { residualFraction, residual } = rinse({ heldBack: 10, rinseVolume: 200, rinses, concentration: 8 })
  expect(100 * residualFraction).toBeCloseTo(percent, digits)
  expect(residual).toBeCloseTo((8 * percent) / 100, digits)
})

test('water run through a stirred vessel leaves exp(−Q t / V): 13.534 percent after two volumes', () => {
  // e⁻² = 0.135335
  expect(100 * flushedFraction({ volume: 200, flushed: 400 })).toBeCloseTo(13.534, 3)
})

test.each([
  [99, 100],
  [2000, 2001],
])('one running tank with %d times the drag-in dilutes %d : 1', (ratio, dilution) => {
  expect(counterFlowDilution({ ratio, tanks: 1 })).toBe(dilution)
})

test('10 oz/gal dragged into 2,000 times the water become 0.005', () => {
  expect(10 / counterFlowDilution({ ratio: 2000, tanks: 1 })).toBeCloseTo(0.005, 5)
})

test.each([
  [1, 11],
  [2, 111],
  [3, 1111],
])('%d tanks in counter-flow at a ratio of 10 dilute %d : 1', (tanks, dilution) => {
  expect(counterFlowDilution({ ratio: 10, tanks })).toBe(dilution)
})
