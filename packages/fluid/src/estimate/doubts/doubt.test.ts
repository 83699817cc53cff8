import { expect, test } from 'vitest'
import type { EstimatedDoubt } from '../answer-types.ts'
import { publishedPriors } from '../priors.ts'
import { type Branch, newSump, type SumpState } from '../shop-estimate.ts'
import { beliefOf, specOf } from '../testing.ts'
import { doubtOf } from './doubt.ts'
import type { Story } from './stories.ts'

const surprise = {
  number: 1,
  entry: 'r',
  at: 40,
  found: { quantity: 'brix', read: 1, expected: 2, low90: 1, high90: 3 },
  readings: 0,
  otherSump: 0.25,
} as const

function sumpTelling(told: Partial<Record<Story, number>>, doubts: EstimatedDoubt[] = []): SumpState {
  const branches = Object.entries(told).map(
    ([story, probability]): Branch => ({
      belief: beliefOf({}),
      weight: Math.log(probability),
      fluids: [],
      stories: [{ surprise: 1, story: story as Story, volume: 30 }],
    }),
  )
  return { ...newSump(specOf(), 0, publishedPriors), branches, doubts }
}
const water = (at: number, kind: EstimatedDoubt['kind'] = 'unlogged-water'): EstimatedDoubt => ({
  ...doubtOf(sumpTelling({ 'unlogged-water': 1 }), surprise, false)!,
  at,
  kind,
})

test('a doubt names its record, what was found there, its likeliest story and the others', () => {
  const doubt = doubtOf(sumpTelling({ 'unlogged-addition': 0.7, 'unlogged-water': 0.2, stands: 0.1 }), surprise, true)
  expect(doubt).toEqual({
    kind: 'unlogged-addition',
    entry: 'r',
    entries: ['r'],
    at: 40,
    probability: expect.closeTo(0.7, 12),
    volume: expect.closeTo(30, 12),
    found: surprise.found,
    open: true,
    others: [
      { kind: 'unlogged-water', probability: expect.closeTo(0.2, 12) },
      { kind: 'stands', probability: expect.closeTo(0.1, 12) },
    ],
  })
})

test('a figure that is not this sump’s is misread or another’s, whichever is likelier, with the probability of both', () => {
  // 0.8 set aside: 0.6 misread, 0.2 another sump's.
  const misread = doubtOf(sumpTelling({ 'set-aside': 0.8, stands: 0.2 }), surprise, true)!
  expect(misread).toMatchObject({ kind: 'misread', probability: expect.closeTo(0.8, 12), volume: null })
  expect(misread.others.map(({ kind }) => kind)).toEqual(['stands'])
  const other = doubtOf(sumpTelling({ 'set-aside': 0.8, stands: 0.2 }), { ...surprise, otherSump: 0.9 }, true)!
  expect(other).toMatchObject({ kind: 'wrong-sump', probability: expect.closeTo(0.8, 12) })
})

test('where it is likelier than not that nothing is wrong there is no doubt', () => {
  expect(doubtOf(sumpTelling({ stands: 0.6, 'unlogged-water': 0.4 }), surprise, true)).toBe(null)
})

test('stories hardly worth a word are left out', () => {
  const doubt = doubtOf(
    sumpTelling({ 'unlogged-water': 0.994, stands: 0.004, 'unlogged-drawoff': 0.002 }),
    surprise,
    true,
  )
  expect(doubt!.others).toEqual([])
})

test('water that nobody wrote and comes a second time within a month leaks in', () => {
  const again = (doubts: EstimatedDoubt[]) =>
    doubtOf(sumpTelling({ 'unlogged-water': 1 }, doubts), surprise, true)!.kind
  expect(again([])).toBe('unlogged-water')
  expect(again([water(33)])).toBe('leak-in')
  expect(again([water(33, 'leak-in')])).toBe('leak-in')
  expect(again([water(10.1)])).toBe('leak-in')
  expect(again([water(10)])).toBe('unlogged-water')
  expect(again([{ ...water(33), kind: 'misread' }])).toBe('unlogged-water')
})
