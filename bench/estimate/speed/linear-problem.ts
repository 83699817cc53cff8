import kalman, { type KalmanFilter, type State } from 'kalman-filter'
import { moving, size } from '../../../packages/fluid/src/estimate/state.ts'
import { type Belief, blur, learn, newBelief, spread } from '../../../packages/fluid/src/filter/index.ts'

/**
 * One linear filter problem of the model's size: the first quantities change by themselves, the others stay; one reading a step that
 * depends on three of them. The matrices are those of half a working day at a sump, rounded.
 */
const rows: number[][] = [
  row([0, 1], [4, -0.009], [5, -0.004]),
  row([1, 1.006], [0, -0.02], [4, 0.07], [5, 0.001]),
  row([2, 1.006], [0, -0.7], [4, 2.2], [5, 0.03], [13, 0.5]),
  row([3, 1.006], [0, -0.3], [4, 0.9], [5, 0.01]),
]
const noise = [1e-6, 1e-4, 2, 0.2, 1e-4, 1e-4, 1e-7, 1e-5, 1e-5, 1e-8, 1e-6, 1e-6, 1e-8, 1e-4]
const slope = row([1, 0.8], [2, 0.0005], [7, 1])
const variance = 0.017
const firstMean = [1, 8, 250, 80, -4.1, -5.1, 0, 0.2, 0, 0.12, 0, 0, 1, 0.2]
const firstVariance = [0.01, 2, 3e4, 6e3, 0.3, 0.5, 0.02, 0.1, 0.3, 0.002, 0.003, 0.004, 0.003, 0.06]

function row(...places: [number, number][]): number[] {
  const values = new Array<number>(size).fill(0)
  for (const [place, value] of places) values[place] = value
  return values
}

/** A reading for a step: about what is expected, with something of everything. */
export const readingAt = (step: number): number => 6.5 + Math.sin(step) + 0.5 * Math.sin(7.3 * step)

const jacobian = new Float64Array(rows.flat())
const slopes = new Float64Array(slope)
const moved = new Float64Array(moving)

export function ourStart(): Belief {
  const belief = newBelief(size)
  belief.mean.set(firstMean)
  for (let i = 0; i < size; i++) belief.cov[i * size + i] = firstVariance[i]!
  return belief
}

/** One step of ours: the means by the matrix, `spread`, noise, `learn`. */
export function ourStep(belief: Belief, reading: number): void {
  const { mean } = belief
  for (let i = 0; i < moving; i++) {
    let sum = 0
    for (let j = 0; j < size; j++) sum += jacobian[i * size + j]! * mean[j]!
    moved[i] = sum
  }
  mean.set(moved)
  spread(belief, moving, jacobian)
  for (let i = 0; i < size; i++) blur(belief, i, noise[i]!)
  let expected = 0
  for (let i = 0; i < size; i++) expected += slopes[i]! * mean[i]!
  learn(belief, slopes, reading - expected, variance)
}

const square = (of: (i: number, j: number) => number) =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => of(i, j)))

export function theirStart(): { filter: KalmanFilter; state: State } {
  const mean = firstMean.map((value) => [value])
  const covariance = square((i, j) => (i === j ? firstVariance[i]! : 0))
  const filter = new kalman.KalmanFilter({
    dynamic: {
      dimension: size,
      init: { mean, covariance },
      transition: square((i, j) => (i < moving ? rows[i]![j]! : i === j ? 1 : 0)),
      covariance: square((i, j) => (i === j ? noise[i]! : 0)),
    },
    observation: { dimension: 1, stateProjection: [slope], covariance: [[variance]] },
  })
  return { filter, state: new kalman.State({ mean, covariance }) }
}

/** One step of the package: `predict` and `correct` in one. */
export const theirStep = (filter: KalmanFilter, state: State, reading: number): State =>
  filter.filter({ previousCorrected: state, observation: [reading] })

/** The furthest that ours and theirs lie apart after some steps, as a share of an sd (means) or of the two variances (covariances). */
export function furthestApart(belief: Belief, state: State): number {
  let most = 0
  for (let i = 0; i < size; i++) {
    const sd = Math.sqrt(state.covariance[i]![i]!)
    most = Math.max(most, Math.abs(belief.mean[i]! - state.mean[i]![0]!) / sd)
    for (let j = 0; j < size; j++) {
      const whole = sd * Math.sqrt(state.covariance[j]![j]!)
      most = Math.max(most, Math.abs(belief.cov[i * size + j]! - state.covariance[i]![j]!) / whole)
    }
  }
  return most
}
