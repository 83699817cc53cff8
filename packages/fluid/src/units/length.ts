import type { Millimetres } from '../quantities.ts'
import { scaleOf } from './scale.ts'

/** Units a length or a level is typed and shown in. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft'

/** Exact: an inch is 25.4 mm since the international yard and pound agreement of 1959. */
const scale = scaleOf<LengthUnit>('length', { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 })

export const lengthUnits = scale.units

/**
 * A length in millimetres.
 *
 * @throws {RangeError} a value that is no number, or a unit not in {@link LengthUnit}
 * @example millimetresFrom(12.5, 'in') // 317.5
 */
export function millimetresFrom(value: number, unit: LengthUnit): Millimetres {
  return scale.from(value, unit)
}

/**
 * Millimetres in another unit.
 *
 * @throws {RangeError} a value that is no number, or a unit not in {@link LengthUnit}
 */
export function millimetresTo(millimetres: Millimetres, unit: LengthUnit): number {
  return scale.to(millimetres, unit)
}
