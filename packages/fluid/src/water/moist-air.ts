import type { Celsius } from '../quantities.ts'
import { requireRange } from '../require.ts'

/**
 * Saturation vapour pressure over water, kPa. With T in kelvin, Tc = 647.096 K and τ = 1 − T/Tc:
 *
 *     ln (p / 22 064 kPa) = Tc/T (a₁τ + a₂τ^1.5 + a₃τ³ + a₄τ^3.5 + a₅τ⁴ + a₆τ^7.5)
 *
 * Good to 0.03 % between 0 and 100 °C.
 *
 * Source: W. Wagner, A. Pruß, J. Phys. Chem. Ref. Data 22 (1993) 783–787 (IAPWS).
 *
 * @throws {RangeError} a temperature outside 0 to 100 °C
 * @example saturationPressure(20) // 2.339
 */
export function saturationPressure(temperature: Celsius): number {
  requireRange('temperature', temperature, { min: 0, max: 100 })
  const kelvin = temperature + 273.15
  const tau = 1 - kelvin / 647.096
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau ** 1.5 -
    11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 -
    15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7.5
  return 22_064 * Math.exp((647.096 / kelvin) * sum)
}

/**
 * Kilograms of vapour a kilogram of dry air, from the vapour's pressure in kPa at an air pressure of 101.325 kPa: 0.622 p / (101.325 − p).
 *
 * @throws {RangeError} a pressure outside 0 to 50 kPa
 */
export function humidityRatio(vapourPressure: number): number {
  requireRange('vapourPressure', vapourPressure, { min: 0, max: 50 })
  return (0.622 * vapourPressure) / (101.325 - vapourPressure)
}

/**
 * Heat of evaporation of water, kJ/kg: 2500.9 − 2.381 · temperature, a straight line through the steam tables good to 0.1 % from 0 to 60 °C.
 *
 * @throws {RangeError} a temperature outside 0 to 60 °C
 * @example latentHeat(25) // 2441.4
 */
export function latentHeat(temperature: Celsius): number {
  requireRange('temperature', temperature, { min: 0, max: 60 })
  return 2500.9 - 2.381 * temperature
}
