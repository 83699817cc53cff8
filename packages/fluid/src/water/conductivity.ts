import type { Celsius, MilliSiemensPerCm } from '../quantities.ts'
import { requireRange } from '../require.ts'

/** A reading of an instrument that does not compensate for temperature. */
export interface ConductivityReading {
  conductivity: MilliSiemensPerCm
  /** Of the sample, 0 to 50. */
  temperature: Celsius
  /** Share a kelvin, 0.02 for 2 %; that is the default. */
  perKelvin?: number | undefined
}

/**
 * A conductivity as it would be at 25 °C:
 *
 *     at 25 = conductivity / (1 + perKelvin · (temperature − 25))
 *
 * 2 % a kelvin is common practice for natural waters; 1.91 % is the value of Standard Methods 2510 for potassium chloride. Emulsions lie between 1.8
 * and 2.2 % (common practice): 10 K from 25 °C that is 2 % of the reading either way. An instrument that compensates has done this already: do not
 * do it twice.
 *
 * Source: Standard Methods for the Examination of Water and Wastewater, 2510 B.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 * @example conductivityAt25({ conductivity: 1.8, temperature: 20 }) // 2
 */
export function conductivityAt25({
  conductivity,
  temperature,
  perKelvin = 0.02,
}: ConductivityReading): MilliSiemensPerCm {
  requireRange('conductivity', conductivity, { min: 0 })
  requireRange('temperature', temperature, { min: 0, max: 50 })
  requireRange('perKelvin', perKelvin, { min: 0, max: 0.035 })
  return conductivity / (1 + perKelvin * (temperature - 25))
}
