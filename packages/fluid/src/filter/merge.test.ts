import { expect, test } from 'vitest'
import { type Belief, newBelief } from './belief.ts'
import { mergeBeliefs } from './merge.ts'

function belief(mean: readonly number[], cov: readonly number[]): Belief {
  const made = newBelief(mean.length)
  made.mean.set(mean)
  made.cov.set(cov)
  return made
}

test('two courses become one with their mean, and as wide as they are and lie apart', () => {
  // Weights 3 : 1. Mean 0.75·(0, 0) + 0.25·(4, −8) = (1, −2). P = 0.75·([[1, 0], [0, 1]] + (−1, 2)(−1, 2)ᵀ)
  // + 0.25·([[5, 0], [0, 9]] + (3, −6)(3, −6)ᵀ) = [[1.5 + 3.5, −1.5 − 4.5], [·, 3.75 + 11.25]].
  const into = newBelief(2)
  mergeBeliefs(into, [belief([0, 0], [1, 0, 0, 1]), belief([4, -8], [5, 0, 0, 9])], [3, 1])
  expect([...into.mean]).toEqual([1, -2])
  expect([...into.cov]).toEqual([5, -6, -6, 15])
})

test('a course without weight takes no part', () => {
  const into = newBelief(1)
  mergeBeliefs(into, [belief([2], [3]), belief([100], [9])], [0.2, 0])
  expect([into.mean[0], into.cov[0]]).toEqual([2, 3])
})

test('a belief may be merged into itself', () => {
  const [one, other] = [belief([0], [1]), belief([2], [1])]
  mergeBeliefs(one, [one, other], [1, 1])
  // Mean 1, variance 1 + 1.
  expect([one.mean[0], one.cov[0]]).toEqual([1, 2])
})
