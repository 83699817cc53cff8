import { expect, test } from 'vitest'
import { type IndividualsOptions, individualsChart } from './individuals.ts'

test('centre and limits come from the values and their moving range', () => {
  // mean 10.75; ranges 2, 1, 1: mean 4/3; / 1.128 = 1.18203; × 3 = 3.54610
  const chart = individualsChart([10, 12, 11, 10])
  expect(chart).toMatchObject({ centre: 10.75, points: [10, 12, 11, 10], signals: [] })
  expect(chart.upper).toBeCloseTo(14.2961, 4)
  expect(chart.lower).toBeCloseTo(7.2039, 4)
})

test('a centre and a standard deviation that are given are taken', () => {
  expect(individualsChart([9, 10, 14], { target: 9, sd: 1 })).toMatchObject({
    centre: 9,
    upper: 12,
    lower: 6,
    signals: [{ index: 2, rule: 1 }],
  })
  expect(individualsChart([5], { target: 9, sd: 1 }).signals).toEqual([{ index: 0, rule: 1 }])
})

test('a narrower width moves the limits and the signals of test 1', () => {
  expect(individualsChart([11.5, 9], { target: 9, sd: 1, width: 2 }).signals).toEqual([{ index: 0, rule: 1 }])
})

test('Nelson’s other tests run where asked', () => {
  const rising = [0, 0.1, 0.2, 0.3, 0.4, 0.5]
  expect(individualsChart(rising, { target: 0, sd: 1 }).signals).toEqual([])
  expect(individualsChart(rising, { target: 0, sd: 1, rules: [3] }).signals).toEqual([{ index: 5, rule: 3 }])
})

test('tests that are asked for without test 1 leave the limits silent', () => {
  expect(individualsChart([4, 0], { target: 0, sd: 1, rules: [2] }).signals).toEqual([])
})

test('values that are all equal have limits on their centre and no signal', () => {
  expect(individualsChart([5, 5, 5])).toMatchObject({ centre: 5, upper: 5, lower: 5, sd: 0, signals: [] })
})

test.each<[string, number[], IndividualsOptions]>([
  ['values is 1, expected at least 2', [1], {}],
  ['values is 0, expected at least 1', [], { sd: 1 }],
  ['values.1 is NaN', [1, Number.NaN], {}],
  ['sd is 0, expected above 0', [1, 2], { sd: 0 }],
  ['target is NaN', [1, 2], { target: Number.NaN }],
  ['width is 0, expected above 0', [1, 2], { width: 0 }],
])('%s is refused', (message, values, options) => {
  expect(() => individualsChart(values, options)).toThrow(message)
})
