import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { ReadingEvent, ShopEvent } from '../events.ts'
import { packShopEstimate } from '../pack.ts'
import { addition, keptSump, reading, readingOf, setup, shopOf, sumpOf, tell, trueDays, truePour } from '../testing.ts'
import { roundsOf } from './rounds.ts'

const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']
/** Eight sumps kept for six weeks, and what the ninth round of them reads. */
function eightSumps() {
  const kept = names.map((name, i) => ({ name, ...keptSump(name, { target: 6 + i / 4 }) }))
  for (const { truth } of kept) trueDays(truth, 4)
  const round = kept.map(({ name, at, truth }, i) => readingOf(name, at + 4 + i / 100, truth))
  const events = kept.flatMap((one) => one.events).toSorted((x, y) => x.at - y.at)
  return { events, round, at: kept[0]!.at + 5 }
}
const higher = (by: number) => (one: ReadingEvent) => ({ ...one, brix: (one.brix as number) + by })
const doubtsOf = (events: readonly ShopEvent[], at: number) => {
  const shop = shopOf(events)
  return names.flatMap((name) => estimateSump(shop, name, at, []).doubts)
}

test('one refractometer half a °Brix high over a whole round is one doubt, of the instrument', () => {
  const { events, round, at } = eightSumps()
  const doubts = doubtsOf([...events, ...round.map(higher(0.5))], at)
  expect(doubts).toHaveLength(1)
  expect(doubts[0]).toMatchObject({ kind: 'instrument', entry: null, volume: null })
  expect(doubts[0]!.entries).toEqual(round.map(({ id }) => id))
  expect(doubts[0]!.probability).toBeGreaterThanOrEqual(0.5)
  expect(doubts[0]!.found.read - doubts[0]!.found.expected).toBeGreaterThan(0.25)
})

test('and it hardly moves where the sumps are believed to stand', () => {
  const { events, round, at } = eightSumps()
  const [honest, high] = [shopOf([...events, ...round]), shopOf([...events, ...round.map(higher(0.5))])]
  for (const name of names) {
    const [right, moved] = [honest, high].map((shop) => estimateSump(shop, name, at, []).now.concentration.mean)
    expect(Math.abs(moved! - right!)).toBeLessThan(0.2)
  }
})

test('a round as it should be raises no doubt', () => {
  const { events, round, at } = eightSumps()
  expect(doubtsOf([...events, ...round], at)).toEqual([])
})

test('one figure of a round that is wrong by itself is that sump’s doubt alone', () => {
  const { events, round, at } = eightSumps()
  const doubts = doubtsOf([...events, ...round.map((one, i) => (i === 3 ? higher(-3)(one) : one))], at)
  expect(doubts).toMatchObject([{ entry: round[3]!.id }])
})

test('readings by two instruments are two rounds', () => {
  const { events, round } = eightSumps()
  const shop = shopOf(events)
  const mixed = round.map((one, i) => (i % 2 === 0 ? { ...higher(0.5)(one), instrument: 'other' } : one))
  const offsets = roundsOf(shop, mixed)
  expect(offsets.get(mixed[0]!.id)!.mean).toBeGreaterThan(0.25)
  expect(Math.abs(offsets.get(mixed[1]!.id)!.mean)).toBeLessThan(0.1)
  expect(offsets.get(mixed[0]!.id)!.others).toHaveLength(4)
})

test('readings more than four hours apart are two rounds, however many lie between', () => {
  const { events, round } = eightSumps()
  const at = round[0]!.at
  const spaced = (gap: number) =>
    roundsOf(
      shopOf(events),
      round.map((one, i) => ({ ...one, at: at + i * gap })),
    )
  expect(spaced(0.07).get(round[0]!.id)!.others).toHaveLength(8)
  const far = round.map((one, i) => ({ ...one, at: at + (i < 4 ? 0 : 0.2) + i / 1000 }))
  expect(roundsOf(shopOf(events), far).get(round[0]!.id)!.others).toHaveLength(4)
})

test('a single reading of a day, or one without °Brix, makes no round', () => {
  const { events, round } = eightSumps()
  expect(roundsOf(shopOf(events), round.slice(0, 1)).size).toBe(0)
  const level = { ...round[1]!, brix: null, seen: 190 }
  expect(roundsOf(shopOf(events), [round[0]!, level]).size).toBe(0)
})

test('what happens between the readings of a day counts, and looking at the round keeps nothing of it', () => {
  const shop = shopOf([
    setup('s'),
    setup('t'),
    reading('s', 1.3, { brix: 8, seen: 200 }),
    reading('t', 1.31, { brix: 8 }),
  ])
  const truth = { volume: 170, concentration: 8, evaporation: 0, carryOff: 0 }
  truePour(truth, 30, 0)
  const day = [
    addition('s', 2.3, { amount: 30, strength: 0 }),
    reading('s', 2.35, { brix: 6.8 }),
    reading('t', 2.36, { brix: 8 }),
  ]
  const [doubts, branches] = [sumpOf(shop).doubts.length, sumpOf(shop).branches.length]
  const offsets = roundsOf(shop, day)
  // Expected after the water, not before it.
  expect(offsets.get(day[1]!.id)!.others[0]!.expected).toBeLessThan(7.6)
  expect([sumpOf(shop).doubts.length, sumpOf(shop).branches.length]).toEqual([doubts, branches])
  expect(sumpOf(shop).pouredSince).toBe(false)
})

test('a day told after its round was looked at comes to the same as one told at once', () => {
  const { events, round } = eightSumps()
  const [once, twice] = [shopOf(events), shopOf(events)]
  roundsOf(twice, round)
  tell(once, round)
  tell(twice, round)
  expect(packShopEstimate(twice)).toEqual(packShopEstimate(once))
})
