import type { Random } from './random.ts'
import type { ShopDays } from './shop-days.ts'
import { saturationPressure } from './vapour.ts'

/** What a day's weather does in the shop. */
export interface DayWeather {
  /** °C of fluid in a running machine. */
  runningTemperature: number
  /** °C of fluid at rest. */
  restingTemperature: number
  /** Evaporation of a running machine to that of an ordinary day. */
  evaporation: number
}

/** Vapour pressure difference of an ordinary day, kPa: fluid at 25 °C, air holding 1.3 kPa. */
const ordinaryDrive = 1.87

/**
 * Weather of each day: a year's wave about 10 °C with its top in mid July, days that resemble the day before, and
 * moist outside air that the shop warms. Evaporation goes with the vapour pressure at the fluid's surface less that
 * in the air. Common practice for the figures of the place; the law is Dalton's.
 */
export function weatherOf({ dates }: ShopDays, random: Random): DayWeather[] {
  let warmer = 0
  let moister = 0
  return dates.map((date) => {
    warmer = 0.8 * warmer + random.normal(2)
    moister = 0.7 * moister + random.normal(0.06)
    const outside = 10 + 9 * Math.cos((2 * Math.PI * (dayOfYear(date) - 197)) / 365.25) + warmer
    const humidity = Math.min(0.95, Math.max(0.35, 0.72 + moister))
    const shop = 17 + 0.35 * Math.max(0, outside)
    const running = shop + 4
    const drive = saturationPressure(running) - humidity * saturationPressure(outside)
    return { runningTemperature: running, restingTemperature: shop, evaporation: Math.max(0.2, drive / ordinaryDrive) }
  })
}

const dayOfYear = (date: string) => (Date.parse(date) - Date.parse(`${date.slice(0, 4)}-01-01`)) / 86_400_000 + 1
