import type { Celsius } from '../quantities.ts'
import { requireRange } from '../require.ts'

/**
 * Density of air-free water at one atmosphere, kg/m³, 0 to 100 °C.
 *
 * Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97–105, equation 16; coefficients from memory, 998.20 kg/m³ at 20 °C.
 */
function waterDensity(t: Celsius): number {
  const above =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 + t * -280.54253e-12))))
  return above / (1 + 16.87985e-3 * t)
}

/**
 * Refractive index of water against vacuum at one atmosphere, at the sodium line (589.3 nm) on which refractometer scales stand:
 *
 *     (n² − 1) / (n² + 2) = ρ (a0 + a1 ρ + a2 T + a3 λ² T + a4/λ² + a5/(λ² − λuv²) + a6/(λ² − λir²) + a7 ρ²)
 *
 * with ρ, T and λ in units of 1000 kg/m³, 273.15 K and 589 nm. Against air it is lower by the factor 1.00027, which differences
 * and a correction in °Brix do not feel.
 *
 * Source: IAPWS R9-97, Release on the Refractive Index of Ordinary Water Substance (1997), equation 1; coefficients from memory.
 *
 * @throws {RangeError} a temperature outside 0 to 100 °C
 * @example waterIndex(20) // 1.33335
 */
export function waterIndex(temperature: Celsius): number {
  requireRange('temperature', temperature, { min: 0, max: 100 })
  const density = waterDensity(temperature) / 1000
  const warmth = (temperature + 273.15) / 273.15
  const wave2 = (589.3 / 589) ** 2
  const refraction =
    density *
    (0.244257733 +
      9.74634476e-3 * density -
      3.73234996e-3 * warmth +
      2.68678472e-4 * wave2 * warmth +
      1.5892057e-3 / wave2 +
      2.45934259e-3 / (wave2 - 0.229202 ** 2) +
      0.90070492 / (wave2 - 5.432937 ** 2) -
      1.66626219e-2 * density ** 2)
  return Math.sqrt((1 + 2 * refraction) / (1 - refraction))
}
