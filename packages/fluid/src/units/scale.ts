import { requireRange } from '../require.ts'

/** Conversions between a canonical unit and units that differ from it by a factor alone. */
export interface Scale<Unit extends string> {
  units: readonly Unit[]
  /** A value in `unit`, in the canonical unit. */
  from(value: number, unit: Unit): number
  /** A canonical value, in `unit`. */
  to(canonical: number, unit: Unit): number
}

/**
 * A scale from the size of each unit, measured in the canonical one. A value may be negative: differences have units too.
 *
 * @throws {RangeError} by its conversions: a value that is no number, a unit the scale does not have
 */
export function scaleOf<Unit extends string>(quantity: string, sizes: Readonly<Record<Unit, number>>): Scale<Unit> {
  const units = Object.keys(sizes) as Unit[]
  const sizeOf = (unit: Unit): number => {
    if (!Object.hasOwn(sizes, unit))
      throw new RangeError(`unit of ${quantity} is ${unit}, expected one of ${units.join(', ')}`)
    return sizes[unit]
  }
  return {
    units,
    from(value, unit) {
      requireRange(quantity, value, {})
      return value * sizeOf(unit)
    },
    to(canonical, unit) {
      requireRange(quantity, canonical, {})
      return canonical / sizeOf(unit)
    },
  }
}
