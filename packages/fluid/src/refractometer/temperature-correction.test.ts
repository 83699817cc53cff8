import fc from 'fast-check'
import { expect, test } from 'vitest'
import { brixAt20, sucroseIndexAt20 } from './temperature-correction.ts'

test('at 20 °C there is nothing to correct', () => {
  expect(brixAt20({ brix: 7, instrument: 'uncompensated', temperature: 20 })).toEqual({ brixAt20: 7, correction: 0 })
})

test('a cold sample reads too high, a warm one too low', () => {
  expect(brixAt20({ brix: 7, instrument: 'uncompensated', temperature: 12 }).correction).toBeLessThan(0)
  expect(brixAt20({ brix: 7, instrument: 'uncompensated', temperature: 28 }).correction).toBeGreaterThan(0)
})

test('a compensated instrument, or one set to zero at the temperature of the sample, is never corrected', () => {
  expect(brixAt20({ brix: 7, instrument: 'compensated' })).toEqual({ brixAt20: 7, correction: 0 })
  expect(brixAt20({ brix: 7, instrument: 'zeroed-at-sample-temperature' })).toEqual({ brixAt20: 7, correction: 0 })
})

test('a corrected reading cannot be corrected again: it is no longer a raw reading', () => {
  const once = brixAt20({ brix: 7, instrument: 'uncompensated', temperature: 12 })
  // @ts-expect-error a BrixAt20 is not a RawBrix
  expect(() => brixAt20(once)).toThrow(RangeError)
})

test('a compensated reading has no temperature to correct with', () => {
  // @ts-expect-error only an uncompensated reading names a temperature
  expect(brixAt20({ brix: 7, instrument: 'compensated', temperature: 12 }).correction).toBe(0)
})

test('a corrected reading is never below nothing', () => {
  expect(brixAt20({ brix: 0.1, instrument: 'uncompensated', temperature: 15 }).brixAt20).toBe(0)
})

test.each([
  ['brix is -1', { brix: -1, temperature: 20 }],
  ['brix is 31, expected at least 0 and at most 30', { brix: 31, temperature: 25 }],
  ['temperature is 4, expected at least 5 and at most 40', { brix: 5, temperature: 4 }],
  ['temperature is 41', { brix: 5, temperature: 41 }],
  ['temperature is NaN', { brix: 5, temperature: Number.NaN }],
])('%s is refused', (message, reading) => {
  expect(() => brixAt20({ instrument: 'uncompensated', ...reading })).toThrow(message)
})

test('the warmer the sample, the more is added', () => {
  const temperature = fc.double({ min: 5, max: 39, noNaN: true })
  fc.assert(
    fc.property(fc.double({ min: 0, max: 30, noNaN: true }), temperature, (brix, temperature) => {
      const colder = brixAt20({ brix, instrument: 'uncompensated', temperature }).correction
      const warmer = brixAt20({ brix, instrument: 'uncompensated', temperature: temperature + 1 }).correction
      expect(warmer).toBeGreaterThan(colder)
    }),
  )
})

test('a stronger sugar solution bends light more', () => {
  for (let p = 0; p < 30; p += 1) expect(sucroseIndexAt20(p + 1)).toBeGreaterThan(sucroseIndexAt20(p))
})
