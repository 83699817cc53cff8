import { dialCurve, dialDrift } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { curveOf, readDialRows, sayDrift, settingsFrom, settingsOf } from './mixer-curve.ts'

test('rows become checks; half a row is none and no fault, nonsense is a fault at its place', () => {
  const rows = [
    { dial: '1', measured: '2,0' },
    { dial: '2', measured: '' },
    { dial: 'x', measured: '3' },
    { dial: '', measured: '' },
  ]
  const { checks, faults } = readDialRows(rows, 'brix', { factor: 1.5 })
  expect(checks).toEqual([{ dial: 1, percent: 3 }])
  expect(faults.map((each) => Object.keys(each))).toEqual([[], [], ['dial'], []])
})

test('settings are kept to the hundredth, each dial once, never turning back', () => {
  const curve = dialCurve([
    { dial: 2, percent: 6 },
    { dial: 1, percent: 3.333333 },
    { dial: 3, percent: 5.8 },
  ])
  // 6 and 5.8 turn back and are pooled to 5.9.
  expect(settingsFrom(curve)).toEqual([
    [1, 3.33],
    [2, 5.9],
    [3, 5.9],
  ])
})

test('a mixer without two settings has no curve', () => {
  expect(curveOf(settingsOf({ id: 'm', name: 'Mixer' }))).toBeNull()
  expect(curveOf([[1, 3]])).toBeNull()
  expect(
    curveOf([
      [1, 3],
      [2, 6],
    ])?.points,
  ).toEqual([
    [1, 3],
    [2, 6],
  ])
})

// Halfway between dials 5 and 6 the settings say 9 %.
test.each([
  [{ dial: 5.5, percent: 8.1 }, 'At 5.5 the settings say 9.0 %; it pours 8.1 %: 0.9 weaker, 10 % of it.'],
  [{ dial: 5, percent: 8.4 }, 'At 5 the settings say 8.0 %; it pours 8.4 %: 0.4 stronger, 5 % of it.'],
  [{ dial: 5, percent: 8.02 }, 'At 5 the settings say 8.0 %; it pours 8.0 %: as set.'],
  [{ dial: 9, percent: 8 }, 'The settings reach from 5 to 6 on the dial; they say nothing of 9.'],
])('a check against the settings: %j', (check, words) => {
  const curve = dialCurve([
    { dial: 5, percent: 8 },
    { dial: 6, percent: 10 },
  ])
  expect(sayDrift(dialDrift(curve, check), check).replaceAll('\u00a0', ' ')).toBe(words)
})
