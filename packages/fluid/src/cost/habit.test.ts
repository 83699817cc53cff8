import fc from 'fast-check'
import { expect, test } from 'vitest'
import { holdingStrength } from '../estimate/ahead/holding-strength.ts'
import { concentrateAboveTarget, concentrateToHold, type HoldingNeed } from './habit.ts'

test('only days above the target count, and only what was carried off on them', () => {
  // (2 + 1) % of 10 L
  expect(concentrateAboveTarget({ strengths: [9, 8, 6, 7, null], target: 7, carryOff: 10 })).toBeCloseTo(0.3, 12)
  expect(concentrateAboveTarget({ strengths: [], target: 7, carryOff: 10 })).toBe(0)
  expect(concentrateAboveTarget({ strengths: [9], target: 7, carryOff: 0 })).toBe(0)
})

// 4 L a day for 30 days at 7 % are 8.4 L.
const held: HoldingNeed = {
  start: { volume: 200, concentration: 7 },
  endVolume: 200,
  target: 7,
  carryOff: 4,
  days: 30,
  drawnOff: 0,
}

test('holding the target takes what is carried off at the target', () => {
  expect(concentrateToHold(held)).toBeCloseTo(8.4, 12)
  // 20 L drawn off besides, at 7 %.
  expect(concentrateToHold({ ...held, drawnOff: 20 })).toBeCloseTo(9.8, 12)
})

test('a sump that begins rich needs less, one that begins lean or low more', () => {
  expect(concentrateToHold({ ...held, start: { volume: 200, concentration: 8 } })).toBeCloseTo(6.4, 12)
  expect(concentrateToHold({ ...held, start: { volume: 180, concentration: 7 } })).toBeCloseTo(9.8, 12)
  expect(concentrateToHold({ ...held, start: { volume: 200, concentration: 20 } })).toBe(0)
})

test('it is what steady top-ups at the strength that holds the target bring in', () => {
  const litres = fc.double({ min: 0.1, max: 20, noNaN: true })
  fc.assert(
    fc.property(litres, litres, (evaporation, carryOff) => {
      const strength = holdingStrength({ target: 7, evaporation, carryOff })
      const poured = ((evaporation + carryOff) * 30 * strength) / 100
      expect(concentrateToHold({ ...held, carryOff })).toBeCloseTo(poured, 8)
    }),
  )
})

test.each<[string, Partial<HoldingNeed>]>([
  ['target is 101', { target: 101 }],
  ['carryOff is -1', { carryOff: -1 }],
  ['endVolume is NaN', { endVolume: Number.NaN }],
  ['start.volume is -2', { start: { volume: -2, concentration: 7 } }],
])('%s is refused', (message, change) => {
  expect(() => concentrateToHold({ ...held, ...change })).toThrow(message)
})
