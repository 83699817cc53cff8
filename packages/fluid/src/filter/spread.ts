import { type Belief, largestSize } from './belief.ts'
import { recordMove, recordNoise } from './tape.ts'

const half = new Float64Array(largestSize * largestSize)
/** Where a row of the derivatives is not 0, and at how many places: most of them are. */
const places = new Uint8Array(largestSize * largestSize)
const counts = new Uint8Array(largestSize)

/**
 * The covariance after a step in which the first `moving` quantities change and the others stay as they are:
 *
 *     P ← F P Fᵀ,  F = [ A ; 0 I ],  A: moving × size
 *
 * The means are the caller's business. The lower triangle is mirrored from the upper, so that rounding never makes it
 * unsymmetric.
 *
 * Source: R. E. Kalman, J. Basic Engineering 82 (1960) 35; time update of the extended Kalman filter.
 *
 * @param a the derivatives of the first quantities after the step by all before it, row by row
 */
export function spread(belief: Belief, moving: number, a: Float64Array): void {
  const { size: n, cov, tape } = belief
  if (tape !== null) recordMove(tape, belief, moving, a)
  for (let i = 0; i < moving; i++) {
    const row = i * n
    let count = 0
    for (let j = 0; j < n; j++) half[row + j] = 0
    for (let k = 0; k < n; k++) {
      const factor = a[row + k]!
      if (factor === 0) continue
      places[row + count++] = k
      const other = k * n
      for (let j = 0; j < n; j++) half[row + j]! += factor * cov[other + j]!
    }
    counts[i] = count
  }
  for (let i = 0; i < moving; i++) {
    const row = i * n
    for (let j = i; j < moving; j++) {
      const other = j * n
      let sum = 0
      for (let p = 0; p < counts[j]!; p++) {
        const k = places[other + p]!
        sum += half[row + k]! * a[other + k]!
      }
      cov[row + j] = sum
      cov[other + i] = sum
    }
    for (let j = moving; j < n; j++) {
      cov[row + j] = half[row + j]!
      cov[j * n + i] = half[row + j]!
    }
  }
}

/**
 * Adds noise that moves the first quantities together: P ← P + variance × d dᵀ.
 *
 * @param direction of the first `moving` quantities
 */
export function shake(belief: Belief, moving: number, direction: Float64Array, variance: number): void {
  const { size: n, cov, tape } = belief
  if (tape !== null) recordNoise(tape, belief)
  for (let i = 0; i < moving; i++) {
    const factor = direction[i]! * variance
    if (factor === 0) continue
    for (let j = i; j < moving; j++) {
      const value = cov[i * n + j]! + factor * direction[j]!
      cov[i * n + j] = value
      cov[j * n + i] = value
    }
  }
}
