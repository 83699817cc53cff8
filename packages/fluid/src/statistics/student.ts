import { halve } from '../halve.ts'
import { OutOfRange, requireRange } from '../require.ts'

/** A point of Student's distribution, and with how many degrees of freedom. */
export interface StudentPoint {
  t: number
  /** A whole number, 1 to 100 000. */
  degreesOfFreedom: number
}

/**
 * The probability that a Student-distributed quantity lies below t, by the finite series for whole degrees of freedom ν. With θ = atan(|t| / √ν):
 *
 *     within = (2/π) (θ + sin θ (cos θ + 2/3 cos³ θ + … + (2·4·…·(ν−3))/(1·3·…·(ν−2)) cos^(ν−2) θ))      ν odd
 *     within = sin θ (1 + 1/2 cos² θ + … + (1·3·…·(ν−3))/(2·4·…·(ν−2)) cos^(ν−2) θ)                     ν even
 *     below = ½ (1 ± within)
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
 *
 * @throws {RangeError} a t that is no number, degrees of freedom that are not whole
 * @example studentBelow({ t: 1, degreesOfFreedom: 1 }) // 0.75
 */
export function studentBelow({ t, degreesOfFreedom }: StudentPoint): number {
  requireRange('t', t, {})
  requireDegreesOfFreedom(degreesOfFreedom)
  const angle = Math.atan(Math.abs(t) / Math.sqrt(degreesOfFreedom))
  const within =
    degreesOfFreedom % 2 === 0
      ? Math.sin(angle) * series(1, 2, degreesOfFreedom, angle)
      : (2 / Math.PI) *
        (angle + (degreesOfFreedom === 1 ? 0 : Math.sin(angle) * series(Math.cos(angle), 3, degreesOfFreedom, angle)))
  return t < 0 ? (1 - within) / 2 : (1 + within) / 2
}

/** first · (1 + (m−1)/m cos² + (m−1)(m+1)/(m(m+2)) cos⁴ + …), the last divisor being ν − 2. */
function series(first: number, divisor: number, degreesOfFreedom: number, angle: number): number {
  const square = Math.cos(angle) ** 2
  let [sum, term] = [first, first]
  for (let m = divisor; m <= degreesOfFreedom - 2; m += 2) {
    term *= ((m - 1) / m) * square
    sum += term
  }
  return sum
}

/** A share of Student's distribution, and with how many degrees of freedom. */
export interface StudentShare {
  /** Of the probability that lies below, between 0 and 1; 0.95 for a central 90 % interval. */
  probability: number
  /** A whole number, 1 to 100 000. */
  degreesOfFreedom: number
}

/**
 * The t below which a given share of Student's distribution lies: the inverse of {@link studentBelow}, good to 1e-10 between 0.0005 and 0.9995.
 *
 * @throws {RangeError} a probability outside 1e-6 to 1 − 1e-6, degrees of freedom that are not whole
 * @example studentQuantile({ probability: 0.95, degreesOfFreedom: 10 }) // 1.8125
 */
export function studentQuantile({ probability, degreesOfFreedom }: StudentShare): number {
  requireRange('probability', probability, { min: 1e-6, max: 1 - 1e-6 })
  requireDegreesOfFreedom(degreesOfFreedom)
  if (probability === 0.5) return 0
  if (probability < 0.5) return -studentQuantile({ probability: 1 - probability, degreesOfFreedom })
  // With one degree of freedom, the widest case, t = tan(π (probability − ½)).
  const widest = Math.tan(Math.PI * (probability - 0.5)) + 1
  return halve(0, widest, (t) => studentBelow({ t, degreesOfFreedom }) < probability)
}

function requireDegreesOfFreedom(degreesOfFreedom: number): void {
  requireRange('degreesOfFreedom', degreesOfFreedom, { min: 1, max: 100_000 })
  if (!Number.isInteger(degreesOfFreedom)) throw new OutOfRange('degreesOfFreedom', degreesOfFreedom, 'a whole number')
}
