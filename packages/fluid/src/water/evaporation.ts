import type { Celsius, LitresPerDay } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { humidityRatio, latentHeat, saturationPressure } from './moist-air.ts'

/** An open surface of water-mixed fluid and the air above it. */
export interface OpenSurface {
  /** m², above 0: of the tank, and of what runs wet while the machine works. */
  area: number
  /** Of the fluid at its surface, 0 to 60. */
  waterTemperature: Celsius
  /** 0 to 60. */
  airTemperature: Celsius
  /** Relative humidity of the air, 0 to 100 %. */
  humidity: number
  /** Of the air over the surface, 0 to 5 m/s; 0.1 is still air in a hall. */
  airSpeed: number
}

export interface Evaporation {
  /** The lowest and the highest of the forms. */
  low: LitresPerDay
  high: LitresPerDay
  forms: { form: 'pressure' | 'pressure-still' | 'humidity'; litresPerDay: LitresPerDay }[]
  /** The air is damper than the surface: water settles on it instead, and the forms say 0. */
  condensing: boolean
}

/**
 * What evaporates from a free surface, by three published forms that do not agree. With vapour pressures p of surface (w) and air (a) in kPa, latent
 * heat Y in kJ/kg, humidity ratios x in kg/kg, air speed v in m/s and area in m²:
 *
 *     pressure         (0.089 + 0.0782 v) · area · (pw − pa) / Y           kg/s
 *     pressure-still   0.74 of it, as measured on quiet pools
 *     humidity         (25 + 19 v) · area · (xw − xa)                       kg/h
 *
 * They were made for pools. A sump has splash, mist and hot chips besides, and an oil film or a cover holds vapour back: the range is a first
 * notion, and the losses the shop itself writes down are worth more. Most of it hangs on the surface temperature: 5 K more is about half as much
 * again.
 *
 * Source: ASHRAE Handbook, HVAC Applications (pressure; quiet pools measured lower); the humidity form as taught for pools and open tanks.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example evaporationFrom({ area: 1, waterTemperature: 25, airTemperature: 20, humidity: 50, airSpeed: 0.1 }) // 5.1 to 8.3 L a day
 */
export function evaporationFrom(surface: OpenSurface): Evaporation {
  const { area, waterTemperature, airTemperature, humidity, airSpeed } = surface
  requireRange('area', area, { above: 0 })
  requireRange('waterTemperature', waterTemperature, { min: 0, max: 60 })
  requireRange('airTemperature', airTemperature, { min: 0, max: 60 })
  requireRange('humidity', humidity, { min: 0, max: 100 })
  requireRange('airSpeed', airSpeed, { min: 0, max: 5 })

  const atSurface = saturationPressure(waterTemperature)
  const inAir = (humidity / 100) * saturationPressure(airTemperature)
  const excess = Math.max(0, atSurface - inAir)
  const pressure = ((0.089 + 0.0782 * airSpeed) * area * excess * secondsPerDay) / latentHeat(waterTemperature)
  const wetter = Math.max(0, humidityRatio(atSurface) - humidityRatio(inAir))
  const forms: Evaporation['forms'] = [
    { form: 'pressure', litresPerDay: pressure },
    { form: 'pressure-still', litresPerDay: 0.74 * pressure },
    { form: 'humidity', litresPerDay: (25 + 19 * airSpeed) * area * wetter * hoursPerDay },
  ]
  const rates = forms.map(({ litresPerDay }) => litresPerDay)
  return { low: Math.min(...rates), high: Math.max(...rates), forms, condensing: inAir > atSurface }
}

// A kilogram of water is taken as a litre.
const secondsPerDay = 86_400
const hoursPerDay = 24
