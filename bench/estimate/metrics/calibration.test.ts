import { expect, test } from 'vitest'
import { calibrationOf } from './calibration.ts'

const standard = { mean: 2, sd: 0.5, low90: 1.2, high90: 3 }
const came = (...values: number[]) => calibrationOf(values.map((value) => ({ figure: standard, came: value })))

test('an interval of a level reaches as far as the tables say', () => {
  // z = 0.674, 1.282, 1.645, 1.960 (two-sided 50, 80, 90, 95 %): at 2 + 0.5 z, a hundredth of an sd inside and outside.
  expect(came(2.33).held).toEqual({ '50': 1, '80': 1, '90': 1, '95': 1 })
  expect(came(2.345).held).toEqual({ '50': 0, '80': 1, '90': 1, '95': 1 })
  expect(came(1.355).held).toEqual({ '50': 0, '80': 0, '90': 1, '95': 1 })
  expect(came(1.17).held).toEqual({ '50': 0, '80': 0, '90': 0, '95': 1 })
  expect(came(2.985).held).toEqual({ '50': 0, '80': 0, '90': 0, '95': 0 })
})

test('what came beside the interval given is counted on its own side', () => {
  expect(came(1.1, 1.2, 3, 3.1, 3.2)).toMatchObject({ under: 0.2, over: 0.4 })
})

test('what came falls into the tenth of the normal in which it lies', () => {
  // Deciles of the standard normal, Abramowitz & Stegun table 26.5: −1.282, −0.842, −0.524, −0.253, 0, 0.253 …
  const at = (z: number) => came(2 + 0.5 * z).tenths.indexOf(1)
  expect([-9, -1.29, -1.27, -0.85, -0.83, -0.25, 0.01, 0.26, 1.27, 1.29, 9].map(at)).toEqual([
    0, 0, 1, 1, 2, 4, 5, 6, 8, 9, 9,
  ])
})
