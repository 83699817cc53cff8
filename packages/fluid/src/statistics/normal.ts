import { halve } from '../halve.ts'
import { requireRange } from '../require.ts'

/**
 * The probability that a standard normal quantity lies above z, with full relative accuracy far into the tail:
 *
 *     near:  ½ − φ(z) (z + z³/3 + z⁵/(3·5) + …)
 *     far:   φ(z) / (z + 1/(z + 2/(z + 3/(z + …))))
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.2.11 and 26.2.14.
 *
 * @throws {RangeError} a z that is no number
 * @example normalAbove(1.959964) // 0.025
 */
export function normalAbove(z: number): number {
  requireRange('z', z, {})
  if (z < 0) return 1 - normalAbove(-z)
  const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI)
  if (z > 3) {
    let fraction = z
    for (let k = 60; k >= 1; k -= 1) fraction = z + k / fraction
    return density / fraction
  }
  let [sum, term] = [z, z]
  for (let k = 3; Math.abs(term) > 1e-18; k += 2) {
    term *= z ** 2 / k
    sum += term
  }
  return 0.5 - density * sum
}

/**
 * The z below which a given share of the standard normal distribution lies.
 *
 * @param probability share below, 1e-9 to 1 − 1e-9
 * @throws {RangeError} a probability outside that
 * @example normalQuantile(0.95) // 1.644854
 */
export function normalQuantile(probability: number): number {
  requireRange('probability', probability, { min: 1e-9, max: 1 - 1e-9 })
  if (probability > 0.5) return halve(0, 7, (z) => normalAbove(z) > 1 - probability)
  return probability === 0.5 ? 0 : -halve(0, 7, (z) => normalAbove(z) > probability)
}
