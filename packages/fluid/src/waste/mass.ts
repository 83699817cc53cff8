import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'

/**
 * Litres of what was weighed:
 *
 *     litres = kilograms / density
 *
 * A skip of sludge holds water, fines and air: its density is known to a fifth at best, so what was measured in litres comes first.
 *
 * @param density kilograms a litre, above 0
 * @throws {RangeError} a quantity outside its range
 * @example litresOfMass(1600, 1.6) // 1000
 */
export function litresOfMass(kilograms: number, density: number): Litres {
  requireRange('kilograms', kilograms, { min: 0 })
  requireRange('density', density, { above: 0 })
  return kilograms / density
}

/**
 * What litres weigh, in kilograms.
 *
 * @throws {RangeError} a quantity outside its range
 * @example massOfLitres(1000, 0.9) // 900
 */
export function massOfLitres(litres: Litres, density: number): number {
  requireRange('litres', litres, { min: 0 })
  requireRange('density', density, { above: 0 })
  return litres * density
}
