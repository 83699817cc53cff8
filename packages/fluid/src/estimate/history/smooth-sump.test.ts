import { expect, test } from 'vitest'
import { estimateSump } from '../ahead/estimate-sump.ts'
import type { ShopEvent } from '../events.ts'
import { publishedPriors } from '../priors.ts'
import { everyDay, keptSump, readingOf, setup, shopOf, trueDays, truePour } from '../testing.ts'
import { smoothSump } from './smooth-sump.ts'

const shop = { calendar: everyDay, priors: publishedPriors }
const told = (events: readonly ShopEvent[], at: number) => ({
  sump: 's',
  events,
  doubts: estimateSump(shopOf(events), 's', at, []).doubts,
})

test('each whole day from the first asked for to now is looked back at, none before the sump was', () => {
  const { events, at } = keptSump('s', { weeks: 2 })
  const days = smoothSump(shop, told(events, at), { from: 5, at: 12.5 })
  expect(days.map((day) => day.at)).toEqual([5, 6, 7, 8, 9, 10, 11, 12])
  expect(smoothSump(shop, told(events, at), { from: -9, at: 3 })[0]!.at).toBeGreaterThanOrEqual(0)
  const late = [
    setup('s', {}, 3.4),
    readingOf('s', 3.5, { volume: 190, concentration: 8, evaporation: 0, carryOff: 0 }),
  ]
  expect(smoothSump(shop, told(late, 6), { from: -9, at: 6 }).map((day) => day.at)).toEqual([4, 5, 6])
  expect(smoothSump(shop, { sump: 'nowhere', events: [], doubts: [] }, { from: 0, at: 9 })).toEqual([])
})

test('a day past is surer by what came after, and not far from what was believed then', () => {
  const { events, at } = keptSump('s')
  const day = 23
  const [back] = smoothSump(shop, told(events, at), { from: day, at }).filter((one) => one.at === day)
  const then = estimateSump(shopOf(events.filter((event) => event.at <= day)), 's', day, []).now
  expect(back!.concentration.sd).toBeLessThan(then.concentration.sd)
  expect(back!.volume.sd).toBeLessThan(then.volume.sd)
  expect(Math.abs(back!.concentration.mean - then.concentration.mean)).toBeLessThan(3 * then.concentration.sd)
})

test('the last day is as it is believed now', () => {
  const { events, at } = keptSump('s')
  const end = Math.ceil(at)
  const last = smoothSump(shop, told(events, at), { from: end - 3, at: end }).at(-1)!
  const { now } = estimateSump(shopOf(events), 's', end, [])
  expect(last.at).toBe(end)
  expect(last.volume.mean).toBeCloseTo(now.volume.mean, 0)
  expect(last.concentration.mean).toBeCloseTo(now.concentration.mean, 1)
})

test('a figure in doubt as misread is left out of the history', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 4)
  const odd = readingOf('s', at + 4, truth, { brix: 82 })
  const days = smoothSump(shop, told([...events, odd], at + 5), { from: 40, at: at + 5 })
  for (const { concentration } of days) expect(Math.abs(concentration.mean - 8)).toBeLessThan(0.8)
})

test('water that nobody wrote is in the history where it showed', () => {
  const { events, truth, at } = keptSump('s')
  trueDays(truth, 7)
  truePour(truth, 200 - truth.volume, 0)
  const odd = readingOf('s', at + 7, truth)
  const days = smoothSump(shop, told([...events, odd], at + 8), { from: 40, at: at + 8.9 })
  const [before, after] = [days.find((one) => one.at === 49)!, days.at(-1)!]
  expect(after.volume.mean - before.volume.mean).toBeGreaterThan(15)
  expect(after.concentration.mean).toBeLessThan(before.concentration.mean - 0.6)
})

test('intervals lie in each other', () => {
  const { events, at } = keptSump('s')
  for (const { concentration, volume, hardness } of smoothSump(shop, told(events, at), { from: 1, at })) {
    for (const { low90, low50, mean, high50, high90 } of [concentration, volume, hardness]) {
      const rising = [low90, low50, mean, high50, high90]
      expect(rising).toEqual(rising.toSorted((a, b) => a - b))
    }
  }
})
