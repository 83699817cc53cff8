import type { Celsius } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** Units a temperature is typed and shown in. */
export type TemperatureUnit = 'C' | 'F'

export const temperatureUnits: readonly TemperatureUnit[] = ['C', 'F']

const absoluteZero: Record<TemperatureUnit, number> = { C: -273.15, F: -459.67 }

/**
 * A temperature in degrees Celsius: °C = (°F − 32) / 1.8, exact. A point on the scale, not a difference between two.
 *
 * @throws {RangeError} a value below absolute zero or no number, or a unit not in {@link TemperatureUnit}
 * @example celsiusFrom(68, 'F') // 20
 */
export function celsiusFrom(value: number, unit: TemperatureUnit): Celsius {
  requireUnit(unit)
  requireRange(`temperature in °${unit}`, value, { min: absoluteZero[unit] })
  return unit === 'C' ? value : (value - 32) / 1.8
}

/**
 * Degrees Celsius in another unit.
 *
 * @throws {RangeError} a value below absolute zero or no number, or a unit not in {@link TemperatureUnit}
 */
export function celsiusTo(celsius: Celsius, unit: TemperatureUnit): number {
  requireUnit(unit)
  requireRange('temperature in °C', celsius, { min: absoluteZero.C })
  return unit === 'C' ? celsius : celsius * 1.8 + 32
}

function requireUnit(unit: TemperatureUnit): void {
  if (!temperatureUnits.includes(unit)) {
    throw new RangeError(`unit of temperature is ${unit}, expected one of ${temperatureUnits.join(', ')}`)
  }
}
