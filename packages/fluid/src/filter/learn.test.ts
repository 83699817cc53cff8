import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Belief, blur, newBelief } from './belief.ts'
import { learn, learnEach, learnMoments, spreadOf } from './learn.ts'
import { shake, spread } from './spread.ts'

const two = () => {
  const belief = newBelief(2)
  belief.mean.set([1, 1])
  belief.cov.set([4, 2, 2, 3])
  return belief
}
const rounded = (values: Iterable<number>) => [...values].map((value) => Number(value.toFixed(12)))

test('a reading varies as what it reads and as itself', () => {
  // h = (1, −2), P = [[4, 2], [2, 3]]: 4 − 2·2·2 + 4·3 = 8, and 0.5 of its own.
  expect(spreadOf(two(), Float64Array.of(1, -2), 0.5)).toBe(8.5)
})

test('what is read of one quantity teaches the other by what ties them', () => {
  // S = 4 + 1 = 5, k = (0.8, 0.4): a surprise of 5 moves by 4 and 2; P − S k kᵀ = [[4 − 3.2, 2 − 1.6], [2 − 1.6, 3 − 0.8]].
  const belief = two()
  expect(learn(belief, Float64Array.of(1, 0), 5, 1)).toBe(5)
  expect([...belief.mean]).toEqual([5, 3])
  expect(rounded(belief.cov)).toEqual([0.8, 0.4, 0.4, 2.2])
})

test('a reading of a sum is shared between its parts', () => {
  // h = (1, 1): P hᵀ = (6, 5), S = 11 + 1 = 12; a surprise of 2 moves by 1 and 5/6.
  const belief = two()
  expect(learn(belief, Float64Array.of(1, 1), 2, 1)).toBe(12)
  expect(rounded(belief.mean)).toEqual([2, Number((1 + 5 / 6).toFixed(12))])
  expect(rounded(belief.cov)).toEqual(rounded([4 - 36 / 12, 2 - 30 / 12, 2 - 30 / 12, 3 - 25 / 12]))
})

test('several outcomes of one reading are each learnt as if it were the only one', () => {
  const slope = Float64Array.of(1, -2)
  const before = two()
  const surprises = [-1.5, 0, 3]
  const each = learnEach(before, slope, surprises, 0.5)
  expect(before).toEqual(two())
  for (const [i, surprise] of surprises.entries()) {
    const alone = two()
    learn(alone, slope, surprise, 0.5)
    expect(each[i]).toEqual(alone)
  }
})

test('of what is certain already nothing is learnt, whatever comes out', () => {
  const certain = newBelief(2)
  expect(learnEach(certain, Float64Array.of(1, 1), [2], 0)).toEqual([certain])
})

test('an exact reading leaves no doubt of what it read', () => {
  const belief = two()
  learn(belief, Float64Array.of(1, 0), 0.5, 0)
  expect(rounded(belief.mean)).toEqual([1.5, 1.25])
  expect(rounded(belief.cov)).toEqual([0, 0, 0, 2])
})

test('of what is certain nothing is learnt, not even by an exact reading', () => {
  const belief = newBelief(2)
  belief.mean.set([1, 2])
  expect(learn(belief, Float64Array.of(1, 0), 3, 0)).toBe(0)
  expect([...belief.mean, ...belief.cov]).toEqual([1, 2, 0, 0, 0, 0])
})

test('two readings of one moment teach the same in either order', () => {
  const [one, other] = [two(), two()]
  const [h, g] = [Float64Array.of(1, 0), Float64Array.of(0.3, 1)]
  const read = (belief: Belief, slope: Float64Array, y: number, r: number) =>
    learn(belief, slope, y - slope[0]! * belief.mean[0]! - slope[1]! * belief.mean[1]!, r)
  read(one, h, 3, 1)
  read(one, g, 2, 0.5)
  read(other, g, 2, 0.5)
  read(other, h, 3, 1)
  for (let i = 0; i < 2; i++) expect(one.mean[i]).toBeCloseTo(other.mean[i]!, 13)
  for (let i = 0; i < 4; i++) expect(one.cov[i]).toBeCloseTo(other.cov[i]!, 13)
})

test('moments that leave nothing of a reading are that reading', () => {
  const [read, moments] = [two(), two()]
  learn(read, Float64Array.of(1, 0), 5, 1)
  learnMoments(moments, Float64Array.of(1, 0), 1, { shift: 5, remaining: 0 })
  expect(rounded(moments.mean)).toEqual(rounded(read.mean))
  expect(rounded(moments.cov)).toEqual(rounded(read.cov))
})

test('moments that leave a reading as uncertain as it was teach nothing but a shift', () => {
  const belief = two()
  learnMoments(belief, Float64Array.of(1, 0), 1, { shift: 0, remaining: 5 })
  expect(rounded([...belief.mean, ...belief.cov])).toEqual([1, 1, 4, 2, 2, 3])
})

test('moments between leave that share of what a reading would have taken', () => {
  // S = 5; of it 2 remain: 1 − 2/5 = 0.6 of S k kᵀ = [[3.2, 1.6], [1.6, 0.8]].
  const belief = two()
  learnMoments(belief, Float64Array.of(1, 0), 1, { shift: 1, remaining: 2 })
  expect(rounded(belief.mean)).toEqual([1.8, 1.4])
  expect(rounded(belief.cov)).toEqual([4 - 1.92, 2 - 0.96, 2 - 0.96, 3 - 0.48])
})

/** Numbers without rhyme, the same every time. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

/** The least pivot of P + 1e-9 of its diagonal: not negative for a covariance, but for rounding. */
function leastPivot({ size: n, cov }: Belief): number {
  const a = cov.slice()
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < n; i++) a[i * n + i]! *= 1 + 1e-9
  for (let k = 0; k < n; k++) {
    const pivot = a[k * n + k]!
    least = Math.min(least, pivot)
    if (pivot <= 0) continue
    for (let i = k + 1; i < n; i++)
      for (let j = k + 1; j < n; j++) a[i * n + j]! -= (a[i * n + k]! * a[k * n + j]!) / pivot
  }
  return least
}

test('after a hundred thousand steps and readings of any kind it is still a covariance', () => {
  const n = 6
  const next = chance(7)
  const belief = newBelief(n)
  for (let i = 0; i < n; i++) belief.cov[i * n + i] = 10 ** (4 * next() - 2)
  const a = new Float64Array(3 * n)
  const slope = new Float64Array(n)
  for (let k = 0; k < 100_000; k++) {
    for (let i = 0; i < 3; i++) for (let j = 0; j < n; j++) a[i * n + j] = (i === j ? 0.97 : 0) + 0.05 * (next() - 0.5)
    spread(belief, 3, a)
    shake(belief, 3, Float64Array.of(next(), next() - 0.5, 0), 1e-3)
    blur(belief, k % n, 1e-5)
    for (let j = 0; j < n; j++) slope[j] = next() < 0.5 ? 0 : next() - 0.5
    // From nearly exact to nearly nothing.
    learn(belief, slope, 4 * (next() - 0.5), 10 ** (12 * next() - 9))
    if (k % 1000 !== 0) continue
    expect(belief.mean.every(Number.isFinite) && belief.cov.every(Number.isFinite)).toBe(true)
    for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) expect(belief.cov[i * n + j]).toBe(belief.cov[j * n + i])
    expect(leastPivot(belief)).toBeGreaterThan(-1e-12)
  }
})

test('no reading makes anything less certain', () => {
  const figure = fc.double({ min: -2, max: 2, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(figure, { minLength: 9, maxLength: 9 }),
      fc.array(figure, { minLength: 3, maxLength: 3 }),
      fc.double({ min: 1e-6, max: 10, noNaN: true }),
      (roots, slope, variance) => {
        const belief = newBelief(3)
        for (let i = 0; i < 3; i++)
          for (let j = 0; j < 3; j++)
            for (let k = 0; k < 3; k++) belief.cov[i * 3 + j]! += roots[i * 3 + k]! * roots[j * 3 + k]!
        const before = belief.cov.slice()
        learn(belief, Float64Array.from(slope), 1, variance)
        for (let i = 0; i < 3; i++) {
          expect(belief.cov[i * 4]!).toBeLessThanOrEqual(before[i * 4]!)
          expect(belief.cov[i * 4]!).toBeGreaterThanOrEqual(0)
        }
      },
    ),
  )
})
