import type { Belief } from './belief.ts'

/**
 * Several beliefs with their weights become one with the same mean and covariance:
 *
 *     x = Σ w x_b,  P = Σ w (P_b + (x_b − x)(x_b − x)ᵀ)
 *
 * @param weights not negative, not all 0; they need not sum to 1
 */
export function mergeBeliefs(into: Belief, beliefs: readonly Belief[], weights: readonly number[]): void {
  const n = into.size
  const sum = weights.reduce((total, weight) => total + weight, 0)
  const mean = new Float64Array(n)
  const cov = new Float64Array(n * n)
  for (const [b, belief] of beliefs.entries()) {
    const weight = weights[b]! / sum
    for (let i = 0; i < n; i++) mean[i]! += weight * belief.mean[i]!
  }
  for (const [b, belief] of beliefs.entries()) {
    const weight = weights[b]! / sum
    for (let i = 0; i < n; i++) {
      const apart = belief.mean[i]! - mean[i]!
      for (let j = i; j < n; j++) {
        cov[i * n + j]! += weight * (belief.cov[i * n + j]! + apart * (belief.mean[j]! - mean[j]!))
      }
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) cov[i * n + j] = cov[j * n + i]!
  into.mean.set(mean)
  into.cov.set(cov)
}
