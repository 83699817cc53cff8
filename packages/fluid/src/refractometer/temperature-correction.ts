import type { Brix, Celsius } from '../quantities.ts'
import { requireRange } from '../require.ts'
import { waterIndex } from './water-index.ts'

/**
 * A reading as it left the instrument. What was done about temperature decides what is left to do, so it is part of the
 * reading, and only one of the three ever names a temperature.
 */
export type RawBrix =
  /** The instrument compensates by itself. */
  | { brix: Brix; instrument: 'compensated' }
  /** Not compensated, but set to zero with water as warm as the sample: nearly all of the effect is already gone. */
  | { brix: Brix; instrument: 'zeroed-at-sample-temperature' }
  /** Not compensated, set to zero at 20 °C. Temperature of sample and prism, 5 to 40 °C; brix 0 to 30. */
  | { brix: Brix; instrument: 'uncompensated'; temperature: Celsius }

/** A reading as it would be at 20 °C. It has another shape than {@link RawBrix}, so that it cannot be corrected twice. */
export interface BrixAt20 {
  /** Not below 0. */
  brixAt20: Brix
  /** What was added to the reading; 0 where there was nothing to correct. */
  correction: Brix
}

/**
 * The refractive index of sucrose solutions at 20 °C, which is what a Brix scale shows:
 *
 *     n = 1.33299 + 1.42630e-3 p + 5.54024e-6 p² + 1.42848e-8 p³        p: percent of sucrose by mass, 0 to 30
 *
 * Fitted by least squares to the ICUMSA 1974 scale (as in OIV-MA-AS2-02, Table II) at 0–10, 12–15, 29.1 and 30 %; off by at most 6e-6 there.
 */
export function sucroseIndexAt20(p: Brix): number {
  return 1.33299 + p * (1.4263e-3 + p * (5.54024e-6 + p * 1.42848e-8))
}

/** How much lower a degree's warming makes the sucrose's own share of the index, per percent: 1.79e-6 near 20 °C. */
function sucroseShift(p: Brix, warmer: Celsius): number {
  return -p * warmer * (1.79076e-6 - 4.26601e-8 * warmer - 1.52707e-8 * p)
}

/**
 * A reading brought to 20 °C, once. A compensated instrument, or one set to zero with water as warm as the sample, is never
 * corrected. For the others, the scale shows `brix` where the fluid's index at its temperature is that of `brix` at 20 °C:
 *
 *     n20(brix) = n20(at20) + nw(temperature) − nw(20) − shift(at20, temperature)
 *
 * nw is the index of water (IAPWS 1997), n20 the ICUMSA scale, and `shift` the small part that sucrose adds, with three coefficients
 * fitted to OIV-MA-AS2-02, Table I (5–17 °C, 10–30 %). Within 0.03 of that table, save one entry out of line with its neighbours (6 °C,
 * 10 %: 0.04). Above 20 °C water alone carries nine tenths of the correction and the small part is carried on from the cold side.
 *
 * **For coolant it holds only roughly**: oil droplets have another temperature coefficient than sugar. Better to set the zero
 * with the shop's water at the sample's temperature.
 *
 * @throws {RangeError} a reading outside 0 to 95, or without compensation outside 0 to 30; a temperature outside 5 to 40 °C
 * @example brixAt20({ brix: 10, instrument: 'uncompensated', temperature: 15 }) // correction −0.32
 */
export function brixAt20(reading: RawBrix): BrixAt20 {
  if (reading.instrument !== 'uncompensated') {
    requireRange('brix', reading.brix, { min: 0, max: 95 })
    return { brixAt20: reading.brix, correction: 0 }
  }
  const { brix, temperature } = reading
  requireRange('brix', brix, { min: 0, max: 30 })
  requireRange('temperature', temperature, { min: 5, max: 40 })
  if (temperature === 20) return { brixAt20: brix, correction: 0 }

  const shown = sucroseIndexAt20(brix)
  const waterShift = waterIndex(temperature) - waterIndex(20)
  const shows = (p: Brix): number => sucroseIndexAt20(p) + waterShift + sucroseShift(p, temperature - 20)
  const correction = root((change) => shows(brix + change) - shown)
  return { brixAt20: Math.max(0, brix + correction), correction }
}

/** Where a rising, nearly straight function is zero, by the secant method from −1 and 3 °Brix: the corrections lie well inside. */
function root(f: (x: number) => number): number {
  let [a, b] = [-1, 3]
  let [fa, fb] = [f(a), f(b)]
  for (let step = 0; step < 30 && fb !== fa && Math.abs(b - a) > 1e-12; step += 1) {
    const c = b - (fb * (b - a)) / (fb - fa)
    ;[a, fa] = [b, fb]
    ;[b, fb] = [c, f(c)]
  }
  return b
}
