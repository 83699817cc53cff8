import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { EstimatedDoubt } from '../answer-types.ts'
import type { ShopEvent } from '../events.ts'
import { openShopEstimate } from '../pack.ts'
import { fill, strength } from '../state.ts'
import { everyDay, keptSump, readingOf, setup, shopOf, sumpOf, trueDays } from '../testing.ts'
import { followSump } from './follow-sump.ts'

const follow = (events: readonly ShopEvent[], doubts: readonly EstimatedDoubt[] = [], sump = 's') => {
  const seen: [string, number][] = []
  const followed = followSump(openShopEstimate(everyDay), { sump, events, doubts }, (state, event) =>
    seen.push([event.id, state.at]),
  )
  return { followed, seen }
}

test('a sump without doubts is followed to where the shop’s estimate stands', () => {
  const { events } = keptSump('s')
  const { followed } = follow(events)
  const whole = sumpOf(shopOf(events)).branches[0]!.belief
  expect(followed!.branches).toHaveLength(1)
  expect(followed!.branches[0]!.belief.mean[fill]).toBeCloseTo(whole.mean[fill]!, 6)
  expect(followed!.branches[0]!.belief.mean[strength]).toBeCloseTo(whole.mean[strength]!, 6)
})

test('one is told of each event before it happens', () => {
  const events = keptSump('s', { weeks: 1 }).events
  const { seen } = follow(events)
  expect(seen.map(([id]) => id)).toEqual(events.map(({ id }) => id))
  for (const [i, [, at]] of seen.entries()) expect(at).toBeLessThanOrEqual(events[i]!.at)
})

test('an instrument in doubt had that much too much', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const high = readingOf('s', at + 4, truth, { brix: Math.round(10 * truth.concentration + 8) / 10 })
  const doubt: EstimatedDoubt = {
    kind: 'instrument',
    entry: null,
    entries: [high.id],
    at: high.at,
    probability: 0.9,
    volume: null,
    found: { quantity: 'brix', read: 9, expected: 8.2, low90: 7.9, high90: 8.5 },
    open: false,
    others: [],
  }
  const [plain, known] = [follow([...events, high]), follow([...events, high], [doubt])]
  const meanOf = ({ followed }: typeof plain) => followed!.branches[0]!.belief.mean[strength]!
  expect(meanOf(plain)).toBeGreaterThan(meanOf(known) + 0.2)
})

test('what another sump gave comes in, of what this one is filled with', () => {
  const { events, at } = keptSump('s')
  const transfer: ShopEvent = { kind: 'transfer', id: 't', at: at + 0.1, sump: 'other', to: 's', volume: 20 }
  const [before, after] = [follow(events), follow([...events, transfer])].map(
    ({ followed }) => followed!.branches[0]!.belief.mean[fill]!,
  )
  expect(after! - before!).toBeGreaterThan(0.05)
})

test('verdicts are past, and records before the sump was described are left aside', () => {
  const { events, at } = keptSump('s', { weeks: 1 })
  const verdict: ShopEvent = { kind: 'verdict', id: 'v', at, sump: 's', entries: ['x'], answer: 'misread' }
  const { seen } = follow([...events, verdict])
  expect(seen.map(([id]) => id)).not.toContain('v')
  expect(follow([readingOf('s', 1, { volume: 190, concentration: 8, evaporation: 0, carryOff: 0 })]).followed).toBe(
    null,
  )
  expect(follow([setup('s')]).followed).not.toBe(null)
})

test('the shop’s estimate and the followed course agree at the end where a doubt was settled', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const told: ShopEvent[] = [...events, readingOf('s', at + 4, truth, { brix: 82 })]
  const { doubts, now } = estimateSump(shopOf(told), 's', at + 4, [])
  const { followed } = follow(told, doubts)
  expect(Math.abs(followed!.branches[0]!.belief.mean[strength]! - now.concentration.mean)).toBeLessThan(0.1)
})
