import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { type Branch, newSump } from '../shop-estimate.ts'
import { beliefOf, specOf } from '../testing.ts'
import type { Story } from './stories.ts'
import { storiesOf } from './stories-of.ts'

const surprise = {
  number: 1,
  entry: 'r',
  at: 1,
  found: { quantity: 'brix', read: 1, expected: 2, low90: 1, high90: 3 },
  readings: 0,
  otherSump: 0,
} as const
const branch = (probability: number, story?: Story, volume = 0): Branch => ({
  belief: beliefOf({}),
  weight: Math.log(probability),
  fluids: [],
  stories: story === undefined ? [] : [{ surprise: 1, story, volume }],
})

test('branches that tell the same story are one story, with their litres weighed', () => {
  const sump = {
    ...newSump(specOf(), 0, publishedPriors),
    branches: [
      branch(0.3, 'unlogged-water', 20),
      branch(0.35, 'set-aside'),
      branch(0.1, 'unlogged-water', 40),
      branch(0.25),
    ],
  }
  // 0.3 and 0.1 of water: (0.3 · 20 + 0.1 · 40) / 0.4 = 25 L. A branch that says nothing of the surprise lets it stand.
  expect(storiesOf(sump, surprise)).toEqual([
    { story: 'unlogged-water', probability: expect.closeTo(0.4, 12), volume: expect.closeTo(25, 12) },
    { story: 'set-aside', probability: expect.closeTo(0.35, 12), volume: 0 },
    { story: 'stands', probability: expect.closeTo(0.25, 12), volume: 0 },
  ])
})
