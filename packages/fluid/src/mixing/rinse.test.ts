import fc from 'fast-check'
import { expect, test } from 'vitest'
import { counterFlowDilution, flushedFraction, type Rinse, rinse } from './rinse.ts'

const half: Rinse = { heldBack: 50, rinseVolume: 50, rinses: 1, concentration: 8 }

test('each rinse leaves the same share', () => {
  expect(rinse(half)).toEqual({ residualFraction: 0.5, residual: 4 })
  expect(rinse({ ...half, rinses: 3 })).toEqual({ residualFraction: 0.125, residual: 1 })
})

test('no rinse, or a rinse with nothing, leaves all', () => {
  expect(rinse({ ...half, rinses: 0 }).residualFraction).toBe(1)
  expect(rinse({ ...half, rinseVolume: 0, rinses: 5 }).residualFraction).toBe(1)
})

test.each<[string, Partial<Rinse>]>([
  ['heldBack is 0, expected above 0', { heldBack: 0 }],
  ['rinseVolume is -1', { rinseVolume: -1 }],
  ['rinses is 1.5, expected a whole number', { rinses: 1.5 }],
  ['rinses is -1', { rinses: -1 }],
  ['concentration is NaN', { concentration: Number.NaN }],
])('%s is refused', (message, change) => {
  expect(() => rinse({ ...half, ...change })).toThrow(message)
})

test('the same water leaves less in several rinses than in one, but never less than a flow through', () => {
  const litres = fc.double({ min: 1, max: 1000, noNaN: true })
  fc.assert(
    fc.property(litres, litres, fc.integer({ min: 2, max: 20 }), (heldBack, water, rinses) => {
      const once = rinse({ heldBack, rinseVolume: water, rinses: 1, concentration: 8 }).residualFraction
      const often = rinse({ heldBack, rinseVolume: water / rinses, rinses, concentration: 8 }).residualFraction
      expect(often).toBeLessThan(once)
      // Ever smaller batches come down to a flow through what is held back.
      expect(often).toBeGreaterThan(flushedFraction({ volume: heldBack, flushed: water }))
    }),
  )
})

test('water run through a full vessel takes the old fluid out ever more slowly', () => {
  expect(flushedFraction({ volume: 200, flushed: 0 })).toBe(1)
  expect(flushedFraction({ volume: 200, flushed: 200 })).toBeCloseTo(1 / Math.E, 12)
  expect(() => flushedFraction({ volume: 0, flushed: 1 })).toThrow('volume is 0')
  expect(() => flushedFraction({ volume: 1, flushed: -1 })).toThrow('flushed is -1')
})

test('a counter-flow rinse is a power series of its ratio', () => {
  // 1 + 3 + 9 + 27
  expect(counterFlowDilution({ ratio: 3, tanks: 3 })).toBe(40)
  expect(counterFlowDilution({ ratio: 1, tanks: 4 })).toBe(5)
  expect(counterFlowDilution({ ratio: 0, tanks: 2 })).toBe(1)
})

test('a rinse without a tank is refused', () => {
  expect(() => counterFlowDilution({ ratio: 3, tanks: 0 })).toThrow('tanks is 0, expected at least 1')
  expect(() => counterFlowDilution({ ratio: -1, tanks: 1 })).toThrow('ratio is -1')
})
