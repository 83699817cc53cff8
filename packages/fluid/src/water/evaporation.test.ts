import fc from 'fast-check'
import { expect, test } from 'vitest'
import { evaporationFrom, type OpenSurface } from './evaporation.ts'
import { humidityRatio, latentHeat, saturationPressure } from './moist-air.ts'

const surface: OpenSurface = { area: 2, waterTemperature: 25, airTemperature: 20, humidity: 50, airSpeed: 0.2 }
const formOf = (change: Partial<OpenSurface>, form: string) =>
  evaporationFrom({ ...surface, ...change }).forms.find((one) => one.form === form)!.litresPerDay

test('each form is its equation over a day', () => {
  const [pw, pa] = [saturationPressure(25), 0.5 * saturationPressure(20)]
  const pressure = (86_400 * (0.089 + 0.0782 * 0.2) * 2 * (pw - pa)) / latentHeat(25)
  expect(formOf({}, 'pressure')).toBeCloseTo(pressure, 9)
  expect(formOf({}, 'pressure-still')).toBeCloseTo(0.74 * pressure, 9)
  const humidity = 24 * (25 + 19 * 0.2) * 2 * (humidityRatio(pw) - humidityRatio(pa))
  expect(formOf({}, 'humidity')).toBeCloseTo(humidity, 9)
})

test('the range goes from the lowest form to the highest', () => {
  const { low, high, forms } = evaporationFrom(surface)
  const rates = forms.map(({ litresPerDay }) => litresPerDay).sort((a, b) => a - b)
  expect([low, high]).toEqual([rates[0], rates[2]])
})

test('air damper than the surface gives nothing, and says so', () => {
  expect(evaporationFrom({ ...surface, waterTemperature: 10, airTemperature: 30, humidity: 90 })).toMatchObject({
    low: 0,
    high: 0,
    condensing: true,
  })
  expect(evaporationFrom(surface).condensing).toBe(false)
  // Saturated air as warm as the water takes nothing and gives nothing.
  expect(evaporationFrom({ ...surface, airTemperature: 25, humidity: 100 })).toMatchObject({
    high: 0,
    condensing: false,
  })
})

test.each<[string, Partial<OpenSurface>]>([
  ['area is 0, expected above 0', { area: 0 }],
  ['waterTemperature is 61', { waterTemperature: 61 }],
  ['airTemperature is -1', { airTemperature: -1 }],
  ['humidity is 101', { humidity: 101 }],
  ['airSpeed is NaN', { airSpeed: Number.NaN }],
])('%s is refused', (message, change) => {
  expect(() => evaporationFrom({ ...surface, ...change })).toThrow(message)
})

test('warmer water, drier air and more wind evaporate more, by every form', () => {
  const any = fc.record({
    area: fc.double({ min: 0.1, max: 20, noNaN: true }),
    waterTemperature: fc.double({ min: 20, max: 50, noNaN: true }),
    airTemperature: fc.double({ min: 5, max: 19, noNaN: true }),
    humidity: fc.double({ min: 5, max: 95, noNaN: true }),
    airSpeed: fc.double({ min: 0, max: 3, noNaN: true }),
  })
  fc.assert(
    fc.property(any, (any) => {
      const rates = (of: OpenSurface) => evaporationFrom(of).forms.map(({ litresPerDay }) => litresPerDay)
      const now = rates(any)
      for (const more of [
        { waterTemperature: any.waterTemperature + 1 },
        { humidity: any.humidity - 1 },
        { airSpeed: any.airSpeed + 0.1 },
      ]) {
        for (const [index, rate] of rates({ ...any, ...more }).entries()) expect(rate).toBeGreaterThan(now[index]!)
      }
    }),
  )
})
