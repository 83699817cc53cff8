import { expect, test } from 'vitest'
import { carryOffFromCycles, cyclesFromTracer } from './tracers.ts'

test('cycles are how many times richer the sump is than its top-ups', () => {
  expect(cyclesFromTracer({ sump: 160, water: 40 })).toBe(4)
  // 5 % concentrate leaves 38 mg/L in the top-up.
  expect(cyclesFromTracer({ sump: 152, water: 40, strength: 5 })).toBeCloseTo(4, 12)
})

test('cycles and evaporation tell what is carried off', () => {
  expect(carryOffFromCycles({ evaporation: 6, cycles: 4 })).toBe(2)
})

test.each([
  ['sump is -1', () => cyclesFromTracer({ sump: -1, water: 1 })],
  ['water is 0, expected above 0', () => cyclesFromTracer({ sump: 1, water: 0 })],
  ['strength is -1', () => cyclesFromTracer({ sump: 1, water: 1, strength: -1 })],
  ['strength is 100, expected below 100', () => cyclesFromTracer({ sump: 1, water: 1, strength: 100 })],
  ['cycles is 1, expected above 1', () => carryOffFromCycles({ evaporation: 6, cycles: 1 })],
  ['evaporation is NaN', () => carryOffFromCycles({ evaporation: Number.NaN, cycles: 2 })],
])('%s is refused', (message, does) => {
  expect(does).toThrow(message)
})
