/**
 * The error function, by its Taylor series near 0 and by the continued fraction of its complement beyond 2.5; both
 * carried to double precision.
 *
 * Source: NIST Digital Library of Mathematical Functions, 7.6.2 and 7.9.1.
 */
export function erf(x: number): number {
  const size = Math.abs(x)
  if (size > 6) return Math.sign(x)
  if (size < 2.5) {
    let term = size
    let sum = size
    for (let n = 1; Math.abs(term) > 1e-17 * sum; n++) {
      term *= (2 * size * size) / (2 * n + 1)
      sum += term
    }
    return (Math.sign(x) * 2 * Math.exp(-size * size) * sum) / Math.sqrt(Math.PI)
  }
  let fraction = size
  for (let n = 60; n >= 1; n--) fraction = size + n / 2 / fraction
  return Math.sign(x) * (1 - Math.exp(-size * size) / (Math.sqrt(Math.PI) * fraction))
}

/**
 * Continuous ranked probability score of a normal forecast, in the unit of the figure; smaller is better, and no other
 * forecast than the honest one has a smaller expectation:
 *
 *     sd × { z [2Φ(z) − 1] + 2φ(z) − 1/√π }     z = (came − mean) / sd
 *
 * Source: T. Gneiting, A. Raftery, JASA 102 (2007) 359, eq. 21.
 *
 * @throws {RangeError} an sd that is not above 0
 */
export function crpsOfNormal({ mean, sd }: { mean: number; sd: number }, came: number): number {
  if (!(sd > 0)) throw new RangeError(`sd ${sd} is not above 0`)
  const z = (came - mean) / sd
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  return sd * (z * erf(z / Math.SQRT2) + 2 * density - 1 / Math.sqrt(Math.PI))
}
