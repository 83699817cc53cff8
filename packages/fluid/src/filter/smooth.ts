import type { Belief } from './belief.ts'
import type { Snapshot, Tape } from './tape.ts'

/** What is known of one moment once all readings are in. */
export interface SmoothedStop extends Snapshot {
  label: number
}

/**
 * Looks back over a taped course: what every marked moment looks like by all readings, those after it included.
 *
 *     J = P Fᵀ P′⁻¹,  x̂ = x + J (x̂′ − x′),  P̂ = P + J (P̂′ − P′) Jᵀ
 *
 * with x, P before a move F, x′, P′ expected after it and x̂′, P̂′ looked back at. Quantities that are certain (variance 0)
 * take no part in the inverse.
 *
 * Source: H. E. Rauch, F. Tung, C. T. Striebel, AIAA J. 3 (1965) 1445.
 *
 * @param last the belief at the end of the course, whose tape it is
 */
export function smooth(last: Belief): SmoothedStop[] {
  const { tape, size } = last
  if (tape === null) throw new RangeError('a belief whose course was not taped')
  const stops: SmoothedStop[] = []
  let later: Snapshot = { mean: last.mean.slice(), cov: last.cov.slice() }
  if (tape.moving !== null) {
    later = lookBack(size, { ...tape.moving, after: { mean: last.mean, cov: last.cov } }, later)
  }
  let stop = tape.stops.length - 1
  for (let k = tape.steps.length; k >= 0; k--) {
    // A moment marked after k steps is the state that the steps before it led to, with all that was learnt after.
    for (; stop >= 0 && tape.stops[stop]!.steps === k; stop--) stops.push({ ...later, label: tape.stops[stop]!.label })
    if (k > 0) later = lookBack(size, tape.steps[k - 1]!, later)
  }
  return stops.reverse()
}

function lookBack(n: number, { before, move, after }: Tape['steps'][number], later: Snapshot): Snapshot {
  const towards = product(n, before.cov, move)
  const gain = solveRows(n, after.cov, towards)
  const mean = before.mean.slice()
  const apart = later.mean.map((value, i) => value - after.mean[i]!)
  const change = later.cov.map((value, i) => value - after.cov[i]!)
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) mean[i]! += gain[i * n + j]! * apart[j]!
  const half = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const factor = gain[i * n + k]!
      if (factor !== 0) for (let j = 0; j < n; j++) half[i * n + j]! += factor * change[k * n + j]!
    }
  }
  const cov = before.cov.slice()
  for (let i = 0; i < n; i++) {
    for (let j = i; j < n; j++) {
      let sum = cov[i * n + j]!
      for (let k = 0; k < n; k++) sum += half[i * n + k]! * gain[j * n + k]!
      if (i === j) sum = Math.max(sum, 0)
      cov[i * n + j] = sum
      cov[j * n + i] = sum
    }
  }
  return { mean, cov }
}

/** P Fᵀ. */
function product(n: number, p: Float64Array, f: Float64Array): Float64Array {
  const result = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = 0
      for (let k = 0; k < n; k++) sum += p[i * n + k]! * f[j * n + k]!
      result[i * n + j] = sum
    }
  }
  return result
}

/** A variance under this share of its own quantity's is none: nothing is left once the others are known. */
const nothingLeft = 1e-12

/**
 * X with X P = B, row by row, for a symmetric P: P = L D Lᵀ, pivots with nothing left are passed over.
 *
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, 4.1.
 */
function solveRows(n: number, p: Float64Array, b: Float64Array): Float64Array {
  const lower = new Float64Array(n * n)
  const pivot = new Float64Array(n)
  for (let j = 0; j < n; j++) {
    let d = p[j * n + j]!
    for (let k = 0; k < j; k++) d -= lower[j * n + k]! ** 2 * pivot[k]!
    pivot[j] = d > nothingLeft * p[j * n + j]! ? d : 0
    lower[j * n + j] = 1
    for (let i = j + 1; i < n; i++) {
      let sum = p[i * n + j]!
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]! * pivot[k]!
      lower[i * n + j] = pivot[j] === 0 ? 0 : sum / pivot[j]!
    }
  }
  const x = new Float64Array(n * n)
  const y = new Float64Array(n)
  for (let row = 0; row < n; row++) {
    for (let i = 0; i < n; i++) {
      let sum = b[row * n + i]!
      for (let k = 0; k < i; k++) sum -= lower[i * n + k]! * y[k]!
      y[i] = sum
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = pivot[i] === 0 ? 0 : y[i]! / pivot[i]!
      for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * x[row * n + k]!
      x[row * n + i] = sum
    }
  }
  return x
}
