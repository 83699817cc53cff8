import { expect, test } from 'vitest'
import { publishedPriors, start } from './priors.ts'
import { type Branch, bestBranch, copyBranch, guessedMark, litresOf, newSump, probabilities } from './shop-estimate.ts'
import { evaporation, fill, gauge, holdUp, scale, size, strength } from './state.ts'
import { beliefOf, specOf } from './testing.ts'

test('a mark that nobody gave is four fifths of the brim, or a middling machine’s', () => {
  expect(guessedMark(specOf({ mark: 180 }))).toBe(180)
  expect(guessedMark(specOf({ mark: null, capacity: 250 }))).toBe(200)
  expect(guessedMark(specOf({ mark: null, capacity: null }))).toBe(200)
})

test('of a new sump is believed what sumps of its kind have in common, and what its plate says', () => {
  const groups = {
    ...publishedPriors.groups,
    central: { evaporation: { mean: -4, sd: 0.3 }, carryOff: { mean: -6, sd: 0.4 } },
  }
  const sump = newSump(specOf({ group: 'central', holdUp: 30 }), 5, { ...publishedPriors, groups })
  const { mean, cov } = bestBranch(sump).belief
  expect(sump).toMatchObject({ plate: 200, at: 5, dataAt: null })
  expect([mean[evaporation], mean[strength]]).toEqual([-4, 8])
  expect(Math.sqrt(cov[evaporation * (size + 1)]!)).toBeCloseTo(0.3, 12)
  // 30 L of 200, known to a quarter and 2 % of the mark.
  expect(mean[holdUp]).toBeCloseTo(0.15, 12)
  expect(Math.sqrt(cov[holdUp * (size + 1)]!)).toBeCloseTo(0.02 + 0.25 * 0.15, 12)
})

test('without a plate its size and its level are known worse, without a target it is about at 7 percent', () => {
  const { mean, cov } = bestBranch(
    newSump(specOf({ mark: null, target: null, holdUp: null }), 0, publishedPriors),
  ).belief
  expect(Math.sqrt(cov[scale * (size + 1)]!)).toBeCloseTo(start.guessedScaleSd, 12)
  expect(Math.sqrt(cov[gauge * (size + 1)]!)).toBeCloseTo(start.guessedGaugeSd, 12)
  expect(mean[strength]).toBe(7)
  expect(mean[holdUp]).toBe(start.holdUp.mean)
})

const branch = (weight: number): Branch => ({
  belief: beliefOf({ [fill]: 0.5, [scale]: Math.log(1.2) }),
  weight,
  fluids: [{ fluid: 'a', share: 1 }],
  stories: [],
})

test('branches have the probabilities of their weights, whatever these are counted from', () => {
  // e⁰ : e^−1 : with 1000 more or less nothing changes.
  const [one, other] = probabilities([branch(-1000), branch(-1001)])
  expect(one).toBeCloseTo(1 / (1 + Math.exp(-1)), 12)
  expect(one! + other!).toBeCloseTo(1, 12)
})

test('the likeliest branch is the best; of equals the first', () => {
  const sump = { ...newSump(specOf(), 0, publishedPriors), branches: [branch(-2), branch(-1), branch(-1)] }
  expect(bestBranch(sump)).toBe(sump.branches[1])
})

test('a branch holds its fill of the true mark in litres', () => {
  // 0.5 · 1.2 · 200.
  expect(litresOf(branch(0), newSump(specOf(), 0, publishedPriors))).toBeCloseTo(120, 12)
})

test('a copied branch goes on by itself', () => {
  const first = branch(0)
  const copy = copyBranch(first)
  copy.belief.mean[fill] = 0.9
  copy.stories.push({ surprise: 1, story: 'stands', volume: 0 })
  expect(first.belief.mean[fill]).toBe(0.5)
  expect(first.stories).toEqual([])
})
