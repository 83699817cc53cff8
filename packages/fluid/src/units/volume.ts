import type { Litres } from '../quantities.ts'
import { scaleOf } from './scale.ts'

/**
 * Units a volume is typed and shown in. A US gallon and an imperial gallon differ by a fifth, so neither is ever just "gal" here.
 */
export type VolumeUnit = 'L' | 'mL' | 'm3' | 'us-gal' | 'imp-gal' | 'us-qt' | 'us-fl-oz'

/** Exact: NIST Handbook 44, appendix C (a US gallon is 231 cubic inches); Units of Measurement Regulations 1995 (UK). */
const scale = scaleOf<VolumeUnit>('volume', {
  L: 1,
  mL: 0.001,
  m3: 1000,
  'us-gal': 3.785411784,
  'imp-gal': 4.54609,
  'us-qt': 3.785411784 / 4,
  'us-fl-oz': 3.785411784 / 128,
})

export const volumeUnits = scale.units

/**
 * A volume in litres.
 *
 * @throws {RangeError} a value that is no number, or a unit not in {@link VolumeUnit}
 * @example litresFrom(60, 'us-gal') // 227.12…
 */
export function litresFrom(value: number, unit: VolumeUnit): Litres {
  return scale.from(value, unit)
}

/**
 * Litres in another unit.
 *
 * @throws {RangeError} a value that is no number, or a unit not in {@link VolumeUnit}
 * @example litresTo(10, 'imp-gal') // 2.1997…
 */
export function litresTo(litres: Litres, unit: VolumeUnit): number {
  return scale.to(litres, unit)
}
