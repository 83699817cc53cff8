import { expect, test } from 'vitest'
import { saturationPressure } from './vapour.ts'

// kPa, CRC Handbook of Chemistry and Physics.
test.each([
  [0, 0.61129],
  [10, 1.2281],
  [20, 2.3388],
  [30, 4.2455],
  [40, 7.3814],
  [50, 12.344],
])('at %d °C the vapour pressure is %d kPa within 0.5 %%', (celsius, pressure) => {
  expect(Math.abs(saturationPressure(celsius) / pressure - 1)).toBeLessThan(0.005)
})
