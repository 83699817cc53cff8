import { type Belief, copyBelief, dropBelief, largestSize } from './belief.ts'
import { recordLearning } from './tape.ts'

const towards = new Float64Array(largestSize)

/** The variance that a belief gives to a linear reading of it, the reading's own included: h P hᵀ + variance. */
export function spreadOf({ size: n, cov }: Belief, slope: Float64Array, variance: number): number {
  let total = variance
  for (let i = 0; i < n; i++) {
    const s = slope[i]!
    if (s === 0) continue
    const row = i * n
    for (let j = 0; j < n; j++) total += s * cov[row + j]! * slope[j]!
  }
  return total
}

/**
 * Takes in one reading:
 *
 *     S = h P hᵀ + variance,  k = P hᵀ / S,  x ← x + k × surprise
 *     P ← (I − k h) P (I − k h)ᵀ + variance × k kᵀ = P − k (h P) − (P hᵀ) kᵀ + S k kᵀ
 *
 * the symmetric form of Joseph, which stays a covariance whatever the gain is rounded to. Several readings of one moment
 * are taken in one after the other.
 *
 * Source: P. D. Joseph; R. S. Bucy, P. D. Joseph, Filtering for Stochastic Processes (1968), from memory.
 *
 * @param surprise the reading less what was expected
 * @param slope how the expected reading changes with each quantity
 * @param variance of the reading's own error, not negative; with `spread` of 0 as well nothing is learnt
 * @returns S
 */
export function learn(belief: Belief, slope: Float64Array, surprise: number, variance: number): number {
  if (belief.tape !== null) recordLearning(belief.tape, belief)
  const total = gainFor(belief, slope, variance)
  if (total > 0) apply(belief, surprise / total, 1 / total)
  return total
}

/**
 * One reading with several outcomes, each with the belief it leads to: how certain that is does not hang on what is read, so that it is
 * worked out once. The belief itself stays as it is.
 *
 * @returns beliefs in the order of the surprises, the same as `learn` leads to
 */
export function learnEach(
  belief: Belief,
  slope: Float64Array,
  surprises: readonly number[],
  variance: number,
): Belief[] {
  const learnt = copyBelief(belief)
  const total = gainFor(learnt, slope, variance)
  if (total > 0) apply(learnt, 0, 1 / total)
  const beliefs = surprises.map((surprise) => {
    const one = copyBelief(learnt)
    const step = surprise / total
    if (total > 0) for (let i = 0; i < one.size; i++) one.mean[i] = belief.mean[i]! + towards[i]! * step
    return one
  })
  dropBelief(learnt)
  return beliefs
}

/**
 * Takes in a reading of which only the moments after it are known, such as one that says "between two marks":
 * its expected value moves by `shift` and its variance shrinks to `remaining`.
 *
 *     x ← x + k × shift,  P ← P − (1 − remaining / S) × S k kᵀ
 *
 * Source: moment matching of a censored normal, as in T. Minka, Expectation propagation (2001).
 */
export function learnMoments(
  belief: Belief,
  slope: Float64Array,
  variance: number,
  moments: { shift: number; remaining: number },
): void {
  if (belief.tape !== null) recordLearning(belief.tape, belief)
  const total = gainFor(belief, slope, variance)
  if (total > 0) apply(belief, moments.shift / total, (1 - moments.remaining / total) / total)
}

function gainFor({ size: n, cov }: Belief, slope: Float64Array, variance: number): number {
  for (let i = 0; i < n; i++) towards[i] = 0
  let total = variance
  for (let j = 0; j < n; j++) {
    const s = slope[j]!
    if (s === 0) continue
    const row = j * n
    for (let i = 0; i < n; i++) towards[i]! += s * cov[row + i]!
  }
  for (let j = 0; j < n; j++) total += slope[j]! * towards[j]!
  return total
}

/** With k = g / S Joseph's form is P − g gᵀ / S exactly; written once for both triangles it cannot drift apart. */
function apply({ size: n, mean, cov }: Belief, step: number, share: number): void {
  for (let i = 0; i < n; i++) {
    const g = towards[i]!
    if (g === 0) continue
    mean[i]! += g * step
    const row = i * n
    const factor = g * share
    for (let j = i; j < n; j++) {
      const value = cov[row + j]! - factor * towards[j]!
      cov[row + j] = value
      cov[j * n + i] = value
    }
    if (cov[row + i]! < 0) cov[row + i] = 0
  }
}
