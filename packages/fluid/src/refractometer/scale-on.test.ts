import { expect, test } from 'vitest'
import { scaleOn } from './scale-on.ts'

const dated = {
  brixFactor: 1.5,
  factors: [
    { from: '2026-03-01', brixFactor: 1.7 },
    { from: '2026-01-01', brixFactor: 1.6 },
    { lot: 'L7', brixFactor: 2 },
    { lot: 'L7', from: '2026-02-01', brixFactor: 2.1 },
  ],
}

test.each([
  ['2025-12-31', 1.5],
  ['2026-01-01', 1.6],
  ['2026-02-28', 1.6],
  ['2026-03-01', 1.7],
])('on %s the factor that had begun holds', (day, factor) => {
  expect(scaleOn(dated, day)).toEqual({ factor })
})

test('a lot has its own factor where one was measured', () => {
  expect(scaleOn(dated, '2026-01-15', 'L7')).toEqual({ factor: 2 })
  expect(scaleOn(dated, '2026-03-15', 'L7')).toEqual({ factor: 2.1 })
  expect(scaleOn(dated, '2026-03-15', 'L8')).toEqual({ factor: 1.7 })
})

test('a chart wins over every factor, and without any nothing is known', () => {
  const brixChart = [
    [0, 0],
    [5, 8],
  ] as const
  expect(scaleOn({ ...dated, brixChart }, '2026-03-15')).toEqual({ chart: brixChart })
  expect(scaleOn({}, '2026-03-15')).toBeNull()
})
