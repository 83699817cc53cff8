/** A state with its covariance, and the two steps of the extended Kalman filter as textbooks write them. */
export interface Belief {
  mean: number[]
  cov: number[][]
}

export interface Observation {
  /** What was observed less what was expected. */
  surprise: number
  /** How the expected value changes with each state. */
  slope: readonly number[]
  /** Variance of the observation's own error. */
  variance: number
}

export const copyBelief = ({ mean, cov }: Belief): Belief => ({ mean: [...mean], cov: cov.map((row) => [...row]) })

/** P ← F P Fᵀ + diag(noise). */
export function spread(belief: Belief, jacobian: readonly (readonly number[])[], noise: readonly number[]): void {
  const half = jacobian.map((row) =>
    belief.cov.map((_, j) =>
      dot(
        row,
        belief.cov.map((line) => line[j]!),
      ),
    ),
  )
  belief.cov = half.map((row, i) => jacobian.map((other, j) => dot(row, other) + (i === j ? noise[i]! : 0)))
}

/** Variance of the surprise: H P Hᵀ + R. */
export const surpriseVariance = ({ cov }: Belief, { slope, variance }: Observation): number =>
  variance +
  dot(
    slope,
    cov.map((row) => dot(row, slope)),
  )

/** x ← x + K y, P ← (I − K H) P, made symmetric again. */
export function learn(belief: Belief, observation: Observation): void {
  const { cov, mean } = belief
  const towards = cov.map((row) => dot(row, observation.slope))
  const variance = surpriseVariance(belief, observation)
  belief.mean = mean.map((value, i) => value + (towards[i]! * observation.surprise) / variance)
  belief.cov = cov.map((row, i) => row.map((value, j) => value - (towards[i]! * towards[j]!) / variance))
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)
