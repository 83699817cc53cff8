import { expect, test } from 'vitest'
import { evaporation, fill, scale, size } from '../state.ts'
import { addition, keptSump, reading, readingOf, setup, shopOf, sumpOf, tell, trueDays, truePour } from '../testing.ts'

test('a reading that fits is learnt from and counted', () => {
  const shop = shopOf([setup('s'), reading('s', 1, { brix: 8.2, seen: 188 })])
  expect(sumpOf(shop).branches).toHaveLength(1)
  expect(shop.tally).toMatchObject({ readings: 1, brix: { count: 1 }, level: { count: 1 } })
  expect(sumpOf(shop)).toMatchObject({ lastReadingAt: 1, dataAt: 1, pouredSince: false })
})

test('its surprise is counted against what was expected of it', () => {
  const { events, truth, at } = keptSump('s')
  const shop = shopOf(events)
  const before = shop.tally.brix.squares
  trueDays(truth, 4)
  tell(shop, [readingOf('s', at + 4, truth)])
  const { count, squares } = shop.tally.brix
  expect(squares - before).toBeLessThan(4)
  // Honest readings of an even sump surprise less than is expected of readings.
  expect(squares / count).toBeLessThan(1)
})

test('a surprise is not counted as noise: it opens a question', () => {
  const { events, truth, at } = keptSump('s')
  const shop = shopOf(events)
  const { count } = shop.tally.brix
  trueDays(truth, 4)
  truePour(truth, 25, 0)
  tell(shop, [readingOf('s', at + 4, truth)])
  expect(shop.tally.brix.count).toBe(count)
  expect(sumpOf(shop).surprises).toMatchObject([{ entry: `reading s ${at + 4}`, readings: 0 }])
  expect(sumpOf(shop).branches.length).toBeGreaterThan(1)
})

test('a reading of minerals alone is no visit and no reading of strength', () => {
  const shop = shopOf([setup('s'), reading('s', 1, { hardness: 300 })])
  expect(sumpOf(shop)).toMatchObject({ lastReadingAt: null, lastFill: null, dataAt: 1 })
  expect(shop.tally.readings).toBe(0)
})

test('a visit keeps how full the sump was, and whether a pour followed is known at the next', () => {
  const events = [setup('s'), reading('s', 1, { brix: 8, seen: 170 }), addition('s', 1.1), reading('s', 4, { brix: 8 })]
  const shop = shopOf(events)
  expect(sumpOf(shop).lastFill).toBe(sumpOf(shop).branches[0]!.belief.mean[fill])
  expect(sumpOf(shop).pouredSince).toBe(false)
  expect(shop.visits.made.reduce((sum, n) => sum + n)).toBe(1)
  expect(shop.visits.poured.reduce((sum, n) => sum + n)).toBe(1)
})

test('what evaporates is learnt from what is read and poured', () => {
  // 6 L of 200 a day where 0.016 of the mark, 3.2 L, were supposed.
  const { events } = keptSump('s', { weeks: 12, evaporation: 6, carryOff: 1.2 })
  const { mean, cov } = sumpOf(shopOf(events)).branches[0]!.belief
  const litres = 200 * Math.exp(mean[evaporation]! + mean[scale]!)
  expect(litres).toBeGreaterThan(4.8)
  expect(litres).toBeLessThan(7.5)
  expect(Math.sqrt(cov[evaporation * (size + 1)]!)).toBeLessThan(0.35)
})
