import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { ShopEvent } from '../events.ts'
import { fill } from '../state.ts'
import { everyDay, mondayToFriday, reading, setup, shopOf, sumpOf } from '../testing.ts'

const idle = (at: number, from: number, until: number): ShopEvent => ({
  kind: 'idle',
  id: `idle ${at}`,
  at,
  sump: 's',
  from,
  until,
})
const hours = (at: number, counted: number): ShopEvent => ({
  kind: 'hours',
  id: `h ${at}`,
  at,
  sump: 's',
  hours: counted,
})
const begun = [setup('s'), reading('s', 1, { brix: 8, seen: 190 })]
const volumeAt = (events: ShopEvent[], at: number, calendar = everyDay) =>
  estimateSump(shopOf(events, { calendar }), 's', at, []).now.volume.mean

test('a standstill told beforehand saves most of what a time at work loses', () => {
  const [worked, stood] = [volumeAt(begun, 11), volumeAt([...begun, idle(1, 1, 11)], 11)]
  // 0.022 of the mark a day at work; at rest 0.35 of 0.016 and 0.04 of 0.006.
  const [atWork, atRest] = [0.022, 0.35 * 0.016 + 0.04 * 0.006]
  expect((190 - stood) / (190 - worked)).toBeGreaterThan((0.7 * atRest) / atWork)
  expect((190 - stood) / (190 - worked)).toBeLessThan((1.4 * atRest) / atWork)
})

test('told afterwards it takes back what was reckoned as work: the same to a few litres, less sure', () => {
  const events = [...begun, reading('s', 11, { hardness: 250 })]
  const before = estimateSump(shopOf([...begun.slice(0, 2), idle(1, 1, 11), events[2]!]), 's', 11, []).now.volume
  const after = estimateSump(shopOf([...events, idle(11.1, 1, 11)]), 's', 11, []).now.volume
  const never = estimateSump(shopOf(events), 's', 11, []).now.volume
  expect(after.mean).toBeGreaterThan(never.mean + 15)
  expect(Math.abs(after.mean - before.mean)).toBeLessThan(4)
  expect(after.sd).toBeGreaterThan(before.sd)
})

test('told in its midst it takes back the past of it and waits for the rest', () => {
  const shop = shopOf([...begun, reading('s', 6, { hardness: 250 }), idle(6.1, 1, 11)])
  const { volume } = estimateSump(shop, 's', 11, []).now
  const whole = volumeAt([...begun, idle(1, 1, 11)], 11)
  expect(Math.abs(volume.mean - whole)).toBeLessThan(4)
})

test('told in its midst it counts once in the losses of a calendar day', () => {
  const perDay = (events: ShopEvent[]) => estimateSump(shopOf(events), 's', 30, []).now.evaporation.mean
  const events = [...begun, reading('s', 6, { hardness: 250 })]
  // Of the 28 days to day 30 ten were idle, at 0.35 of a day of work: 18 + 3.5.
  expect(perDay([...events, idle(6.1, 2, 12)]) / perDay(events)).toBeCloseTo(21.5 / 28, 4)
})

test('a weekend that is told to be idle changes nothing: nobody worked', () => {
  // Days 9 and 10 are a Saturday and a Sunday.
  const told = [setup('s'), reading('s', 8.5, { brix: 8, seen: 190 })]
  expect(volumeAt([...told, idle(8.6, 9, 11)], 12, mondayToFriday)).toBe(volumeAt(told, 12, mondayToFriday))
})

test('a standstill that ends before it begins is none', () => {
  expect(volumeAt([...begun, idle(1, 11, 3)], 11)).toBe(volumeAt(begun, 11))
})

test('a standstill told twice is taken back once', () => {
  const events = [...begun, reading('s', 11, { hardness: 250 }), idle(11.1, 1, 11)]
  expect(volumeAt([...events, idle(11.2, 1, 11)], 11)).toBe(volumeAt(events, 11))
})

test('a slack time by the counter lost less, a busy one more', () => {
  // Ten hours a day at first; then five, or twenty.
  const steady = [...begun, hours(1, 0), hours(6, 50)]
  const levels = (counted: number) => {
    const shop = shopOf([...steady, hours(11, counted)])
    return sumpOf(shop).branches[0]!.belief.mean[fill]!
  }
  const [slack, same, busy] = [levels(75), levels(100), levels(150)]
  // Half of five days: 2.5 · (0.016 · 0.65 + 0.006 · 0.96) = 0.04 of the mark come back; five days more lose 5 · 0.022.
  expect(slack - same).toBeCloseTo(0.0404, 2)
  expect(same - busy).toBeCloseTo(0.11, 2)
})

test('the counter’s first figure, one that ran backwards, and one of the same shift tell nothing of losses', () => {
  const at = (events: ShopEvent[]) => volumeAt(events, 11)
  const plain = at(begun)
  for (const told of [[hours(3, 900)], [hours(2, 100), hours(5, 20)], [hours(2, 100), hours(2.3, 104)]]) {
    expect(at([...begun, ...told])).toBe(plain)
  }
})

test('after a counter was set back it is counted from there', () => {
  const shop = shopOf([...begun, hours(2, 100), hours(4, 20), hours(8, 60)])
  expect(sumpOf(shop).hours).toEqual({ at: 8, hours: 60, perDay: 10 })
})
