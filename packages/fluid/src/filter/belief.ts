import { recordNoise, recordRenewal, type Tape } from './tape.ts'

/**
 * A normal belief about several quantities at once: their means, and their covariances row by row. Everything in this
 * folder changes it in place and allocates nothing.
 */
export interface Belief {
  /** How many quantities. */
  readonly size: number
  /** `size` means. */
  readonly mean: Float64Array
  /** `size` × `size`, symmetric. */
  readonly cov: Float64Array
  /** Where its steps are written down to be looked at backwards; null where nobody will. */
  tape: Tape | null
}

/** The most quantities a belief can have; the working memory is as large. */
export const largestSize = 16

/** A belief that is certain of zeros. */
export function newBelief(size: number): Belief {
  if (!(size >= 1 && size <= largestSize)) throw new RangeError(`size ${size}: 1 to ${largestSize}`)
  return { size, mean: new Float64Array(size), cov: new Float64Array(size * size), tape: null }
}

/** A copy that goes its own way; nothing of it is written down. */
export function copyBelief(belief: Belief): Belief {
  const copy = spare[belief.size]?.pop() ?? newBelief(belief.size)
  assignBelief(copy, belief)
  return copy
}

/** What is believed of the first quantities alone, as a belief of its own. */
export function copyFirst({ size, mean, cov }: Belief, few: number): Belief {
  const copy = spare[few]?.pop() ?? newBelief(few)
  for (let i = 0; i < few; i++) {
    copy.mean[i] = mean[i]!
    for (let j = 0; j < few; j++) copy.cov[i * few + j] = cov[i * size + j]!
  }
  return copy
}

/** Beliefs that nobody holds any more, by size: to copy into one of them costs a tenth of making one. */
const spare: Belief[][] = Array.from({ length: largestSize + 1 }, () => [])
const mostSpare = 64

/** Gives a belief back that was copied and of which nothing is kept: who calls this must not look at it again. */
export function dropBelief(belief: Belief): void {
  const kept = spare[belief.size]!
  if (belief.tape === null && kept.length < mostSpare) kept.push(belief)
}

export function assignBelief(to: Belief, from: Belief): void {
  to.mean.set(from.mean)
  to.cov.set(from.cov)
}

/** Forgets what was known of one quantity: a new mean and variance, tied to nothing else. */
export function renew(belief: Belief, i: number, value: number, variance: number): void {
  const { size, mean, cov, tape } = belief
  if (tape !== null) recordRenewal(tape, belief, i)
  for (let j = 0; j < size; j++) {
    cov[i * size + j] = 0
    cov[j * size + i] = 0
  }
  mean[i] = value
  cov[i * size + i] = variance
}

/** Adds variance to one quantity: noise that is tied to nothing else. */
export function blur(belief: Belief, i: number, variance: number): void {
  const { size, cov, tape } = belief
  if (tape !== null) recordNoise(tape, belief)
  cov[i * size + i]! += variance
}
