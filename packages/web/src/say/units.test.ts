import { expect, test } from 'vitest'
import { readPlain } from '../fields/read.ts'
import {
  decimalSign,
  fieldFigure,
  fieldVolume,
  sayBand,
  sayMoney,
  sayPerDay,
  sayPricePerVolume,
  short,
} from './units.ts'

test('the keys carry the decimal sign of the device’s language', () => {
  expect(decimalSign('de-DE')).toBe(',')
  expect(decimalSign('en-GB')).toBe('.')
})

test('a device that names a language no standard knows gets a point', () => {
  expect(decimalSign('en-US@posix')).toBe('.')
})

test('litres stand in a field in the shop’s unit', () => {
  expect(fieldVolume(38, 'metric')).toBe('38')
  // 302.83294272 L are 80 US gallons of 3.785411784 L.
  expect(fieldVolume(302.83294272, 'us')).toBe('80')
  // One count of a meter: 0.01 L ÷ 3.785411784 L = 0.00264172… gal.
  expect(fieldVolume(0.01, 'us')).toBe('0.002642')
})

test('a band is said bare where its ends are whole', () => {
  expect(sayBand({ low: 6, high: 10 })).toBe('6–10\u00a0%')
  expect(short(6.5)).toBe('6.5')
})

test('money has cents where it is little and none where it is much', () => {
  expect(sayMoney(0.788, 'EUR')).toBe('€0.79')
  expect(sayMoney(2400, 'USD')).toBe('$2,400')
})

test('a price by the litre is said for the shop’s unit, with three digits that count', () => {
  // 0.004 × 3.785411784 = 0.01514…
  expect(sayPricePerVolume(0.004, { currency: 'USD', units: 'us' })).toBe('$0.0151 per gal')
  expect(sayPricePerVolume(0.004, { currency: 'EUR', units: 'metric' })).toBe('€0.00400 per L')
  expect(sayPricePerVolume(0, { currency: 'EUR', units: 'metric' })).toBe('€0.00 per L')
})

test('a rate is said by the day in the shop’s unit', () => {
  expect(sayPerDay(6.5, 'metric')).toBe('6.5 L a day')
})

test.each([
  [5.6667, '5.67'],
  [249.871, '249.87'],
  [1234.5, '1234.5'],
  [0.41234, '0.4123'],
  [0.015142, '0.01514'],
  [0.125, '0.125'],
  [20, '20'],
])('%f stands in a field as %s, and is read there', (value, text) => {
  expect(fieldFigure(value)).toBe(text)
  expect(readPlain(text)).toEqual({ value: Number(text) })
})
