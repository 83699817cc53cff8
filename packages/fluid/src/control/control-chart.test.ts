import { expect, test } from 'vitest'
import { controlChart } from './control-chart.ts'

const values = [10, 12, 11, 10]

test('each kind of chart takes its own options', () => {
  expect(controlChart({ values, kind: 'individuals', width: 2, target: 10, sd: 1 })).toMatchObject({
    kind: 'individuals',
    upper: 12,
  })
  expect(controlChart({ values, kind: 'ewma', lambda: 0.5, target: 10, sd: 1 })).toMatchObject({
    kind: 'ewma',
    points: [10, 11, 11, 10.5],
  })
  expect(controlChart({ values, kind: 'cusum', target: 10, sd: 1, k: 1, h: 3 })).toMatchObject({
    kind: 'cusum',
    upper: 3,
    points: [{ above: 0 }, { above: 1 }, { above: 1 }, { above: 0 }],
  })
})

test('Nelson’s tests are those asked for', () => {
  const chart = controlChart({ values: [2.5, 2.5], kind: 'individuals', target: 0, sd: 1, rules: [1, 5] })
  expect(chart.signals).toEqual([{ index: 1, rule: 5 }])
})
