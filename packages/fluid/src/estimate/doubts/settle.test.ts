import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { type Branch, newSump, type SumpState, type Surprise } from '../shop-estimate.ts'
import { fill, size } from '../state.ts'
import { beliefOf, specOf } from '../testing.ts'
import { joinAlike, settle } from './settle.ts'
import type { Story } from './stories.ts'

const surprise = (number: number, said: Partial<Surprise> = {}): Surprise => ({
  number,
  entry: `r${number}`,
  at: 10,
  found: { quantity: 'brix', read: 1, expected: 2, low90: 1, high90: 3 },
  readings: 0,
  otherSump: 0,
  ...said,
})
const branch = (probability: number, stories: Record<number, Story>, level = 0.9): Branch => ({
  belief: beliefOf({ [fill]: level }, { [fill]: 0.01 }),
  weight: Math.log(probability),
  fluids: [{ fluid: 'a', share: 1 }],
  stories: Object.entries(stories).map(([number, story]) => ({ surprise: Number(number), story, volume: 10 })),
})
const sumpWith = (branches: Branch[], surprises: Surprise[], at = 12): SumpState => ({
  ...newSump(specOf(), 0, publishedPriors),
  at,
  branches,
  surprises,
})
const undecided = () => [branch(0.6, { 1: 'unlogged-water' }, 1), branch(0.4, { 1: 'stands' }, 0.8)]

test('what is undecided stays open for two more readings, and not beyond four', () => {
  const open = sumpWith(undecided(), [surprise(1, { readings: 2 })])
  settle(open)
  expect([open.surprises.length, open.branches.length, open.doubts.length]).toEqual([1, 2, 0])
  const settled = sumpWith(undecided(), [surprise(1, { readings: 4 })])
  settle(settled)
  expect([settled.surprises.length, settled.branches.length]).toEqual([0, 1])
  expect(settled.doubts).toMatchObject([{ kind: 'unlogged-water', entry: 'r1', open: false }])
})

test('or for five weeks', () => {
  const open = sumpWith(undecided(), [surprise(1)], 45)
  settle(open)
  expect(open.surprises).toHaveLength(1)
  const settled = sumpWith(undecided(), [surprise(1)], 45.1)
  settle(settled)
  expect(settled.surprises).toHaveLength(0)
})

test('or until one story is left: after one more reading, and at once where nothing is wrong', () => {
  const nearly = (story: Story, other: Story, readings: number) => {
    const sump = sumpWith([branch(0.995, { 1: story }), branch(0.005, { 1: other })], [surprise(1, { readings })])
    settle(sump)
    return sump
  }
  expect(nearly('unlogged-water', 'stands', 0).surprises).toHaveLength(1)
  expect(nearly('unlogged-water', 'stands', 1).doubts).toMatchObject([{ kind: 'unlogged-water' }])
  const stands = nearly('stands', 'unlogged-water', 0)
  expect([stands.surprises, stands.doubts]).toEqual([[], []])
})

test('of four open surprises the oldest is closed', () => {
  const stories = { 1: 'stands', 2: 'stands', 3: 'stands', 4: 'stands' } as const
  const others = { 1: 'unlogged-water', 2: 'set-aside', 3: 'set-aside', 4: 'set-aside' } as const
  const sump = sumpWith(
    [branch(0.5, stories), branch(0.5, others)],
    [1, 2, 3, 4].map((number) => surprise(number)),
  )
  settle(sump)
  expect(sump.surprises.map(({ number }) => number)).toEqual([2, 3, 4])
})

test('settled courses become one, with their mean and as wide as they lie apart', () => {
  const sump = sumpWith(undecided(), [surprise(1, { readings: 4 })])
  settle(sump)
  const { mean, cov } = sump.branches[0]!.belief
  // 0.6 · 1 + 0.4 · 0.8 = 0.92; 0.01 + 0.6 · 0.08² + 0.4 · 0.12².
  expect(mean[fill]).toBeCloseTo(0.92, 12)
  expect(cov[fill * (size + 1)]).toBeCloseTo(0.01 + 0.6 * 0.08 ** 2 + 0.4 * 0.12 ** 2, 12)
  expect(Math.exp(sump.branches[0]!.weight)).toBeCloseTo(1, 12)
})

test('courses that an open surprise still tells apart stay apart', () => {
  const sump = sumpWith(
    [
      branch(0.5, { 1: 'stands', 2: 'stands' }),
      branch(0.3, { 1: 'unlogged-water', 2: 'stands' }),
      branch(0.2, { 1: 'stands', 2: 'set-aside' }),
    ],
    [surprise(1, { readings: 4 }), surprise(2)],
  )
  settle(sump)
  expect(sump.branches.map(({ stories }) => stories.map(({ story }) => story))).toEqual([['stands'], ['set-aside']])
  expect(sump.branches.map(({ weight }) => Math.exp(weight))).toEqual([
    expect.closeTo(0.8, 12),
    expect.closeTo(0.2, 12),
  ])
})

test('joined courses keep the fluids of the likeliest', () => {
  const other = { ...branch(0.7, {}), fluids: [{ fluid: 'b', share: 1 }] }
  const sump = sumpWith([branch(0.3, {}), other], [])
  joinAlike(sump)
  expect(sump.branches).toHaveLength(1)
  expect(sump.branches[0]!.fluids).toEqual([{ fluid: 'b', share: 1 }])
})
