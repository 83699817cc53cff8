import { expect, test } from 'vitest'
import { conductivityAt25 } from './conductivity.ts'

test('at 25 °C a conductivity is what it is', () => {
  expect(conductivityAt25({ conductivity: 1.5, temperature: 25 })).toBe(1.5)
})

test('a cool sample reads low, by 2 percent a kelvin unless another share is given', () => {
  expect(conductivityAt25({ conductivity: 1.8, temperature: 20 })).toBeCloseTo(2, 12)
  expect(conductivityAt25({ conductivity: 2.2, temperature: 30 })).toBeCloseTo(2, 12)
  expect(conductivityAt25({ conductivity: 1.9, temperature: 20, perKelvin: 0.01 })).toBeCloseTo(2, 12)
})

test.each([
  ['conductivity is -1', { conductivity: -1, temperature: 20 }],
  ['temperature is 51', { conductivity: 1, temperature: 51 }],
  ['temperature is NaN', { conductivity: 1, temperature: Number.NaN }],
  ['perKelvin is 2', { conductivity: 1, temperature: 20, perKelvin: 2 }],
])('%s is refused', (message, reading) => {
  expect(() => conductivityAt25(reading)).toThrow(message)
})
