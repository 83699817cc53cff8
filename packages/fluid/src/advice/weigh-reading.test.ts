import { expect, test } from 'vitest'
import { quantile95 } from '../interval90.ts'
import { weighReading } from './weigh-reading.ts'

const figure = (mean: number, sd: number) => ({
  mean,
  sd,
  low90: mean - quantile95 * sd,
  high90: mean + quantile95 * sd,
})
// 6 % ± 0.4 read through a factor of 2: 3 °Brix ± 0.2 of its own, ± 0.15 of the reading, together ± 0.25; gain 0.4 · 0.2 / 0.25² = 1.28.
const standing = { concentration: figure(6, 0.4), expected: { brix: figure(3, 0.25), gain: 1.28 } }

test('a reading as expected leaves the mean and makes it surer: √(0.4² − (1.28 · 0.25)²) = 0.24', () => {
  const weighed = weighReading(3, standing)
  expect(weighed).toMatchObject({ outcome: 'fits', concentration: { mean: 6, sd: expect.closeTo(0.24, 12) } })
})

test('a reading beside it draws the mean its way, by the gain: 6 + 1.28 · 0.2 = 6.256', () => {
  expect(weighReading(3.2, standing)).toMatchObject({ concentration: { mean: expect.closeTo(6.256, 12) } })
  expect(weighReading(2.8, standing)).toMatchObject({ concentration: { mean: expect.closeTo(5.744, 12) } })
})

// Half the interval is 1.6449 · 0.25 = 0.4112; twice that 0.8224.
test.each([
  [3.822, 'fits'],
  [3.823, 'far'],
  [2.178, 'fits'],
  [2.177, 'far'],
])('%f °Brix where 2.6 to 3.4 are expected: %s', (read, outcome) => {
  expect(weighReading(read, standing).outcome).toBe(outcome)
})

test('a reading of sides that differ is judged by its own side', () => {
  const uneven = { ...standing, expected: { brix: { ...standing.expected.brix, low90: 2.9 }, gain: 1 } }
  expect(weighReading(2.79, uneven).outcome).toBe('far')
  expect(weighReading(3.21, uneven).outcome).toBe('fits')
})

test('nothing is less than no concentrate', () => {
  const lean = { concentration: figure(0.1, 0.4), expected: { brix: figure(0.5, 0.25), gain: 1.28 } }
  expect(weighReading(0.2, lean)).toMatchObject({ concentration: { mean: 0, low90: 0 } })
})
