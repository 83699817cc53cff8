import { expect, test } from 'vitest'
import { humidityRatio, latentHeat, saturationPressure } from './moist-air.ts'

test('at 100 °C water boils at the pressure of the air', () => {
  // 101.42 kPa on today's temperature scale
  expect(saturationPressure(100)).toBeCloseTo(101.42, 1)
})

test('the humidity ratio is the vapour’s share by mass of the dry air', () => {
  expect(humidityRatio(0)).toBe(0)
  // 0.622 × 2 / 99.325
  expect(humidityRatio(2)).toBeCloseTo(0.0125245, 7)
})

test('warm water takes a little less heat to evaporate', () => {
  expect(latentHeat(0)).toBeCloseTo(2500.9, 6)
  expect(latentHeat(50)).toBeLessThan(latentHeat(0))
})

test.each([
  ['temperature is -1', () => saturationPressure(-1)],
  ['temperature is 101', () => saturationPressure(101)],
  ['vapourPressure is -1', () => humidityRatio(-1)],
  ['temperature is 61', () => latentHeat(61)],
])('%s is refused', (message, does) => {
  expect(does).toThrow(message)
})
