import { expect, test } from 'vitest'
import { decimalSign, fieldVolume, sayBand, short } from './units.ts'

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
})

test('a band is said bare where its ends are whole', () => {
  expect(sayBand({ low: 6, high: 10 })).toBe('6–10\u00a0%')
  expect(short(6.5)).toBe('6.5')
})
