import { expect, test } from 'vitest'
import { lowerFirst, sayCount, sayList } from './phrases.ts'
import { sayConcentration, sayNumber, sayParts, sayPercent, sayStrength, sayVolume } from './units.ts'

const metric = { units: 'metric' } as const
const us = { units: 'us' } as const

test.each([
  [0.567, '0.57 L'],
  [5.25, '5.3 L'],
  [38, '38 L'],
  [99.94, '99.9 L'],
  [131.7, '132 L'],
  [4370, '4370 L'],
  [12345, '12,345 L'],
  [0, '0 L'],
])('%s litres are said as %s', (litres, said) => {
  expect(sayVolume(litres, metric)).toBe(said)
})

// A US gallon is 3.785411784 L, an imperial gallon 4.54609 L.
test('gallons are the reader’s own', () => {
  expect(sayVolume(3.785411784, us)).toBe('1 gal')
  expect(sayVolume(5, us)).toBe('1.32 gal')
  expect(sayVolume(60, us)).toBe('15.9 gal')
  expect(sayVolume(4.54609, { units: 'imperial' })).toBe('1 gal')
})

test('the parts as written add up to the whole as written', () => {
  expect(sayParts(50, 2.25, metric)).toEqual({ part: '2.3 L', rest: '47.7 L' })
  expect(sayParts(38, 6.928, metric)).toEqual({ part: '6.9 L', rest: '31.1 L' })
})

test('percent has one decimal, a strength only where it needs it', () => {
  expect(sayPercent(8, metric)).toBe('8.0 %')
  expect(sayStrength(15, metric)).toBe('15 %')
  expect(sayStrength(18.23, metric)).toBe('18.2 %')
})

test('a concentration is said with its interval where there is one', () => {
  expect(sayConcentration({ mean: 6.1, low90: 5.6, high90: 6.6 }, metric)).toBe('6.1 % (5.6–6.6)')
  expect(sayConcentration({ mean: 6.1, low90: 6.1, high90: 6.1 }, metric)).toBe('6.1 %')
})

test('number signs are those of the reader', () => {
  expect(sayNumber(7.5, 1, { locale: 'de' })).toBe('7,5')
  expect(sayVolume(38.5, { units: 'metric', locale: 'de' })).toBe('38,5 L')
})

test('there is no minus nothing', () => {
  expect(sayNumber(-0.001, 1)).toBe('0.0')
})

test('lists and counts are said as people say them', () => {
  expect([sayList([]), sayList(['a']), sayList(['a', 'b']), sayList(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ])
  expect([sayCount(1, 'day', 'days'), sayCount(2, 'day', 'days')]).toEqual(['1 day', '2 days'])
})

test('only a name of several plain words loses its capital', () => {
  expect(['Deionised water', 'Osmosewasser', 'DI water', 'VE-Wasser'].map(lowerFirst)).toEqual([
    'deionised water',
    'Osmosewasser',
    'DI water',
    'VE-Wasser',
  ])
})
