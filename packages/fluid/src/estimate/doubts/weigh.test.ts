import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { EstimatedDoubt } from '../answer-types.ts'
import type { ShopEvent } from '../events.ts'
import { keptSump, readingOf, setup, shopOf, sumpOf, trueDays, truePour } from '../testing.ts'

const inOrder = (events: readonly ShopEvent[]) => events.toSorted((a, b) => a.at - b.at)
const doubtsAt = (events: readonly ShopEvent[], at: number, sump = 's'): EstimatedDoubt[] =>
  estimateSump(shopOf(inOrder(events)), sump, at, []).doubts

test('a sump that is kept well and written up honestly raises no doubt, and is known', () => {
  const { events, truth, at } = keptSump('s', { weeks: 20 })
  const { now, doubts } = estimateSump(shopOf(events), 's', at, [])
  expect(doubts).toEqual([])
  expect(now.concentration.low90).toBeLessThan(truth.concentration)
  expect(now.concentration.high90).toBeGreaterThan(truth.concentration)
  expect(now.volume.low90).toBeLessThan(200)
  expect(now.volume.high90).toBeGreaterThan(200)
})

test('a point that slipped is a misreading, and moves nothing', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const slipped = readingOf('s', at + 4, truth)
  const [doubt, ...others] = doubtsAt([...events, { ...slipped, brix: 82 }], at + 4)
  expect(others).toEqual([])
  expect(doubt).toMatchObject({ kind: 'misread', entry: slipped.id, open: true, volume: null })
  expect(doubt!.probability).toBeGreaterThan(0.9)
  expect(doubt!.found).toMatchObject({ quantity: 'brix', read: 82 })
  expect(Math.abs(doubt!.found.expected - 8.2)).toBeLessThan(0.3)
  const { now } = estimateSump(shopOf([...events, { ...slipped, brix: 82 }]), 's', at + 4, [])
  expect(Math.abs(now.concentration.mean - truth.concentration)).toBeLessThan(0.4)
})

test('a level that jumps up at the usual strength is a pour that nobody wrote, of about so many litres', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 7)
  const litres = 200 - truth.volume
  truePour(truth, litres, (8 * 3) / 4.5)
  const [doubt] = doubtsAt([...events, readingOf('s', at + 7, truth)], at + 7)
  expect(doubt).toMatchObject({ kind: 'unlogged-addition', open: true, found: { quantity: 'seen' } })
  // 31.5 L; the mark itself is known to a sixth.
  expect(Math.abs(doubt!.volume! - litres)).toBeLessThan(8)
})

test('a level that jumps up and a strength that falls is water', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 7)
  truePour(truth, 200 - truth.volume, 0)
  const [doubt] = doubtsAt([...events, readingOf('s', at + 7, truth)], at + 7)
  expect(doubt!.kind).toBe('unlogged-water')
  expect(doubt!.others.map(({ kind }) => kind)).toContain('unlogged-addition')
})

test('a strength that jumps up at its level is concentrate or a figure that is not its own', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  truePour(truth, 4, 100)
  const told = [...events, readingOf('s', at + 4, truth)]
  const kinds = doubtsAt(told, at + 4).flatMap(({ kind, others }) => [kind, ...others.map((one) => one.kind)])
  expect(kinds).toContain('unlogged-concentrate')
  // Read again, and again: it is so.
  for (const days of [3, 4, 3]) {
    trueDays(truth, days)
    told.push(readingOf('s', told.at(-1)!.at + days, truth))
  }
  const settled = doubtsAt(told, told.at(-1)!.at)
  expect(settled.map(({ kind }) => kind)).toEqual(['unlogged-concentrate'])
  expect(Math.abs(settled[0]!.volume! - 4)).toBeLessThan(2)
})

test('a level that drops at its strength is a draw-off that nobody wrote', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  truth.volume -= 50
  const told = [...events, readingOf('s', at + 4, truth)]
  trueDays(truth, 3)
  told.push(readingOf('s', at + 7, truth))
  const [doubt] = doubtsAt(told, at + 7)
  expect(doubt!.kind).toBe('unlogged-drawoff')
  expect(doubt!.volume!).toBeLessThan(-25)
})

test('two figures of a round that were exchanged are each the other sump’s', () => {
  const [s, t] = [keptSump('s', { target: 9 }), keptSump('t', { target: 6 })]
  for (const { truth } of [s, t]) trueDays(truth, 4)
  const [ofS, ofT] = [readingOf('s', s.at + 4, s.truth), readingOf('t', t.at + 4.01, t.truth)]
  const events = [...s.events, ...t.events, { ...ofS, brix: ofT.brix }, { ...ofT, brix: ofS.brix }]
  expect(doubtsAt(events, s.at + 4.1, 's')).toMatchObject([{ kind: 'wrong-sump', entry: ofS.id }])
  expect(doubtsAt(events, s.at + 4.1, 't')).toMatchObject([{ kind: 'wrong-sump', entry: ofT.id }])
})

test('a fluid poured under the name of another shows by its factor', () => {
  // Both fluids are in the shop; half of the sump is filled with b, 2 percent per °Brix, and written as a.
  const scales = new Map([
    ['a', { factor: 1 }],
    ['b', { factor: 2.5 }],
  ])
  const told: ShopEvent[] = [setup('s')]
  const charged = {
    kind: 'charge',
    id: 'c',
    sump: 's',
    at: 1,
    volume: 200,
    strength: 8,
    fluid: 'a',
    heldBack: 0,
  } as const
  told.push({ ...charged, water: { hardness: 150, chloride: 40 } })
  const truth = { volume: 200, concentration: 8, evaporation: 1.5, carryOff: 3 }
  trueDays(truth, 1)
  told.push(readingOf('s', 2, truth, { scales, brix: Math.round(10 * (truth.concentration / 2.5)) / 10 }))
  const kinds = doubtsAt(told, 2).flatMap(({ kind, others }) => [kind, ...others.map((one) => one.kind)])
  expect(kinds).toContain('wrong-fluid')
})

test('never more than a few branches are followed, whatever is read', () => {
  const { events, truth, at } = keptSump('s', { weeks: 3 })
  const told = [...events]
  for (const [i, brix] of [3, 11, 5, 14, 2, 9, 6, 12].entries()) {
    told.push(readingOf('s', at + 1 + i, truth, { brix, seen: i % 2 === 0 ? 190 : 110 }))
    const { branches } = sumpOf(shopOf(told))
    expect(branches.length).toBeGreaterThanOrEqual(1)
    expect(branches.length).toBeLessThanOrEqual(6)
  }
})

test('a doubt is settled by readings that follow', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const told = [...events, readingOf('s', at + 4, truth, { brix: 5 })]
  expect(doubtsAt(told, at + 4)).toMatchObject([{ kind: 'misread', open: true }])
  for (const day of [7, 11, 14, 18, 21]) {
    trueDays(truth, day === 7 || day === 14 || day === 21 ? 3 : 4)
    told.push(readingOf('s', at + day, truth))
  }
  const shop = shopOf(told)
  expect(sumpOf(shop).surprises).toEqual([])
  expect(sumpOf(shop).branches).toHaveLength(1)
  expect(estimateSump(shop, 's', at + 21, []).doubts).toMatchObject([{ kind: 'misread', open: false }])
})
