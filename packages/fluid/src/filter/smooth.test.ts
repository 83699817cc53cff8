import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Belief, blur, newBelief, renew } from './belief.ts'
import { learn } from './learn.ts'
import { smooth } from './smooth.ts'
import { spread } from './spread.ts'
import { newTape, stopHere } from './tape.ts'

function taped(mean: readonly number[], cov: readonly number[]): Belief {
  const belief = newBelief(mean.length)
  belief.mean.set(mean)
  belief.cov.set(cov)
  belief.tape = newTape()
  return belief
}
const first = Float64Array.of(1)

test('a course that was not taped cannot be looked back at', () => {
  expect(() => smooth(newBelief(1))).toThrow(/not taped/)
})

test('a later reading tells of an earlier moment what the noise between them lets through', () => {
  // Level 0 ± √4, a day's noise of 4, then read 4 with variance 8: S = 16, the level of that day 0 + 8/16 · 4 = 2, variance 4.
  // Back over the day: J = 4/8 = 0.5: 0 + 0.5 · 2 = 1, 4 + 0.25 · (4 − 8) = 3.
  const level = taped([0], [4])
  stopHere(level, 1)
  blur(level, 0, 4)
  learn(level, first, 4, 8)
  stopHere(level, 2)
  const back = smooth(level)
  expect(back.map(({ label, mean, cov }) => [label, mean[0], cov[0]])).toEqual([
    [1, 1, 3],
    [2, 2, 4],
  ])
})

test('a moment marked before a reading of the same time knows it as well', () => {
  // 0 ± √4 read as 2 with variance 4: 1, variance 2.
  const level = taped([0], [4])
  stopHere(level, 1)
  learn(level, first, 2, 4)
  const [back] = smooth(level)
  expect([back!.mean[0], back!.cov[0]]).toEqual([1, 2])
})

test('what is renewed tells nothing of what was before', () => {
  const level = taped([0], [4])
  stopHere(level, 1)
  renew(level, 0, 10, 1)
  learn(level, first, 5, 1)
  const [back] = smooth(level)
  expect([back!.mean[0], back!.cov[0]]).toEqual([0, 4])
})

test('a course that goes on after its last reading is looked back at from its end', () => {
  const level = taped([3], [4])
  stopHere(level, 1)
  blur(level, 0, 1)
  stopHere(level, 2)
  blur(level, 0, 1)
  const back = smooth(level)
  expect(back.map(({ label, mean, cov }) => [label, mean[0], cov[0]])).toEqual([
    [1, 3, 4],
    [2, 3, 5],
  ])
})

test('without noise between them every moment is the last one moved back', () => {
  // x₁ = x₀ + v₀, v₁ = v₀: with nothing unsettled x₀ = x₁ − v₁ exactly.
  const moving = taped([0, 1], [4, 1, 1, 2])
  stopHere(moving, 0)
  spread(moving, 2, Float64Array.of(1, 1, 0, 1))
  moving.mean[0]! += moving.mean[1]!
  learn(moving, Float64Array.of(1, 0), 3, 0.5)
  const [back] = smooth(moving)
  const [x, v] = moving.mean
  const [xx, xv, , vv] = moving.cov
  expect(back!.mean[0]).toBeCloseTo(x! - v!, 12)
  expect(back!.mean[1]).toBeCloseTo(v!, 12)
  expect(back!.cov[0]).toBeCloseTo(xx! - 2 * xv! + vv!, 12)
  expect(back!.cov[3]).toBeCloseTo(vv!, 12)
})

test('a quantity that is certain takes no part', () => {
  const pair = taped([0, 5], [4, 0, 0, 0])
  stopHere(pair, 1)
  spread(pair, 2, Float64Array.of(1, 1, 0, 1))
  pair.mean[0]! += pair.mean[1]!
  blur(pair, 0, 4)
  learn(pair, Float64Array.of(1, 0), 4, 8)
  // As the first case, 5 higher: 9 was read of a level expected at 5.
  const [back] = smooth(pair)
  expect([...back!.mean]).toEqual([1, 5])
  expect([...back!.cov]).toEqual([3, 0, 0, 0])
})

test('by all readings nothing is less certain than it was at its time, and several moves between readings are one', () => {
  const figure = fc.double({ min: -1, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(fc.tuple(figure, figure, fc.boolean(), fc.double({ min: 0.01, max: 4, noNaN: true })), {
        minLength: 2,
        maxLength: 12,
      }),
      (steps) => {
        const belief = taped([0, 0], [2, 0.5, 0.5, 1])
        const then: number[][] = []
        for (const [i, [slope, read, isRead, variance]] of steps.entries()) {
          spread(belief, 1, Float64Array.of(0.9, slope))
          blur(belief, 0, 0.1)
          blur(belief, 1, 0.05)
          if (isRead) learn(belief, Float64Array.of(1, 0.2), read, variance)
          stopHere(belief, i)
          then.push([belief.cov[0]!, belief.cov[3]!])
        }
        const back = smooth(belief)
        expect(back.map(({ label }) => label)).toEqual(steps.map((_, i) => i))
        for (const [i, { mean, cov }] of back.entries()) {
          expect(mean.every(Number.isFinite)).toBe(true)
          expect(cov[0]!).toBeLessThanOrEqual(then[i]![0]! * (1 + 1e-9))
          expect(cov[3]!).toBeLessThanOrEqual(then[i]![1]! * (1 + 1e-9))
          expect(cov[0]! * cov[3]! - cov[1]! ** 2).toBeGreaterThan(-1e-12)
        }
        const last = back.at(-1)!
        expect([...last.mean]).toEqual([...belief.mean])
        expect([...last.cov]).toEqual([...belief.cov])
      },
    ),
  )
})
