import { expect, test } from 'vitest'
import type { ShopEvent } from '../events.ts'
import { openShopEstimate } from '../pack.ts'
import { oil, publishedPriors } from '../priors.ts'
import { bias, carryOff, evaporation, fill, scale, size } from '../state.ts'
import { everyDay, reading, setup, shopOf, specOf, sumpOf } from '../testing.ts'
import { alone } from './round.ts'
import { sumpOf as sumpOfEvent, takeEvent } from './take-event.ts'

const begun = () => {
  const shop = shopOf([setup('s'), reading('s', 1, { brix: 8, seen: 190 })])
  return { shop, sump: sumpOf(shop) }
}
const take = (event: ShopEvent) => {
  const { shop, sump } = begun()
  const before = { mean: sump.branches[0]!.belief.mean.slice(), cov: sump.branches[0]!.belief.cov.slice() }
  takeEvent(shop, sump, event, alone(publishedPriors))
  return { sump, before, after: sump.branches[0]!.belief }
}
const plain = (kind: 'skim' | 'job' | 'cleanout'): ShopEvent => ({ kind, id: kind, at: 1, sump: 's' })

test('a sump is there from its first description on', () => {
  const shop = openShopEstimate(everyDay)
  expect(sumpOfEvent(shop, reading('s', 1))).toBe(null)
  const sump = sumpOfEvent(shop, setup('s', { target: 6 }, 2))!
  expect(sump).toMatchObject({ at: 2, spec: specOf({ target: 6 }) })
  expect(sumpOfEvent(shop, reading('s', 3))).toBe(sump)
})

test('skimming takes off a part of what oil feigns', () => {
  const { before, after } = take(plain('skim'))
  expect(after.mean[bias]).toBeCloseTo((1 - oil.skimmed) * before.mean[bias]!, 12)
  expect(after.cov[bias * (size + 1)]!).toBeGreaterThan(before.cov[bias * (size + 1)]!)
})

test('after another job the losses may be others, carry-off above all', () => {
  const { before, after } = take(plain('job'))
  const more = (i: number) => after.cov[i * (size + 1)]! - before.cov[i * (size + 1)]!
  expect(more(carryOff)).toBeCloseTo(0.35 ** 2, 12)
  expect(more(evaporation)).toBeCloseTo(0.01, 12)
  expect([...after.mean]).toEqual([...before.mean])
})

test('after a cleanout the mark may hold more or less than it did', () => {
  const { before, after } = take(plain('cleanout'))
  expect(after.cov[scale * (size + 1)]! - before.cov[scale * (size + 1)]!).toBeCloseTo(0.0025, 12)
})

test('what happens brings the sump to its time; what only tells of it does not', () => {
  expect(take({ ...plain('job'), at: 6 }).sump).toMatchObject({ at: 6, dataAt: 6 })
  for (const event of [
    setup('s', {}, 6),
    { kind: 'verdict', id: 'v', at: 6, sump: 's', entries: [], answer: 'stands' },
    { kind: 'idle', id: 'i', at: 6, sump: 's', from: 7, until: 9 },
    { kind: 'hours', id: 'h', at: 6, sump: 's', hours: 10 },
  ] satisfies ShopEvent[]) {
    const { sump, before, after } = take(event)
    expect(sump).toMatchObject({ at: 1, dataAt: 1 })
    expect(after.mean[fill]).toBe(before.mean[fill])
  }
})

test('an entry of a time gone by happens where the sump stands now', () => {
  const { sump, before, after } = take({ ...plain('job'), at: 0.5 })
  expect(sump.at).toBe(1)
  expect(after.mean[fill]).toBe(before.mean[fill])
})
