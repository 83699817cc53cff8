import fc from 'fast-check'
import { expect, test } from 'vitest'
import { celsiusFrom, celsiusTo, type TemperatureUnit } from './temperature.ts'

test.each([
  [32, 0],
  [68, 20],
  [212, 100],
  [-40, -40],
])('%d °F is %d °C', (fahrenheit, celsius) => {
  expect(celsiusFrom(fahrenheit, 'F')).toBeCloseTo(celsius, 12)
  expect(celsiusTo(celsius, 'F')).toBeCloseTo(fahrenheit, 12)
})

test('degrees Celsius stay as they are', () => {
  expect(celsiusFrom(21.5, 'C')).toBe(21.5)
  expect(celsiusTo(21.5, 'C')).toBe(21.5)
})

test('a temperature comes back as it went in', () => {
  fc.assert(
    fc.property(fc.double({ min: -273, max: 1000, noNaN: true }), (celsius) => {
      expect(Math.abs(celsiusFrom(celsiusTo(celsius, 'F'), 'F') - celsius)).toBeLessThanOrEqual(
        1e-12 * (Math.abs(celsius) + 273.15),
      )
    }),
    { numRuns: 10_000 },
  )
})

test('a temperature below absolute zero is refused', () => {
  expect(() => celsiusFrom(-459.68, 'F')).toThrow('temperature in °F is -459.68, expected at least -459.67')
  expect(() => celsiusTo(-273.16, 'C')).toThrow(RangeError)
})

test('a unit that is not on the list is refused by name', () => {
  expect(() => celsiusFrom(300, 'K' as TemperatureUnit)).toThrow('unit of temperature is K, expected one of C, F')
})
