/**
 * Units of volume, length and temperature.
 *
 * Sources, from memory, exact by definition: NIST Handbook 44, appendix C (US gallon 231 cubic inches, inch 25.4 mm); Units of Measurement
 * Regulations 1995, UK (imperial gallon 4.54609 L); the fixed points of the Fahrenheit scale. Tolerance: a double's last bits, or the digits given.
 */
import { expect, test } from 'vitest'
import { celsiusFrom, litresFrom, litresTo, millimetresFrom, readQuantity } from '../packages/fluid/src/index.ts'

test.each([
  ['us-gal', 3.785411784],
  ['imp-gal', 4.54609],
  ['us-qt', 0.946352946],
  ['us-fl-oz', 0.0295735295625],
  ['m3', 1000],
] as const)('one %s is exactly %d L', (unit, litres) => {
  expect(litresFrom(1, unit)).toBeCloseTo(litres, 13)
  expect(litresTo(litres, unit)).toBeCloseTo(1, 13)
})

test('an imperial gallon is 1.20095 US gallons', () => {
  expect(litresTo(litresFrom(1, 'imp-gal'), 'us-gal')).toBeCloseTo(1.20095, 5)
})

test('a foot is 304.8 mm, an inch 25.4 mm', () => {
  expect(millimetresFrom(1, 'ft')).toBeCloseTo(304.8, 12)
  expect(millimetresFrom(1, 'in')).toBe(25.4)
})

test('water freezes at 32 °F and boils at 212 °F', () => {
  expect(celsiusFrom(32, 'F')).toBe(0)
  expect(celsiusFrom(212, 'F')).toBeCloseTo(100, 12)
})

test('what an American and a German write for twelve hundred and a half litres is the same volume', () => {
  const expected = { value: 1200.5, unit: 'L' }
  expect(readQuantity('1,200.5 L', { kind: 'volume' })).toEqual(expected)
  expect(readQuantity('1.200,5 L', { kind: 'volume' })).toEqual(expected)
})
