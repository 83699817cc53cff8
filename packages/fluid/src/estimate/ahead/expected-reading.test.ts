import { expect, test } from 'vitest'
import type { ReadingEvent, ShopEvent } from '../events.ts'
import { openShopEstimate } from '../pack.ts'
import { takeDay } from '../take-day.ts'
import { estimateSump } from './estimate-sump.ts'
import { expectedReading } from './expected-reading.ts'
import { untouched } from './untouched.ts'

const scales = new Map([['f1', { factor: 2 }]])
const instrument = { scales, resolution: 0.1 }
const spec = { mark: 200, capacity: 240, minVolume: null, holdUp: 0, group: 'stand-alone', fluid: 'f1', target: 8 }
const reading = (at: number, brix: number): ReadingEvent => ({
  kind: 'reading',
  id: `r${at}`,
  at,
  sump: 's1',
  brix,
  scales,
  resolution: 0.1,
  instrument: null,
  titration: null,
  hardness: null,
  chloride: null,
  conductivity: null,
  seen: 190,
  pumps: 'stopped',
})
function shopOf(readings: readonly ReadingEvent[]) {
  const shop = openShopEstimate({ workDays: [1, 2, 3, 4, 5], shutdowns: [] })
  const events: ShopEvent[] = [{ kind: 'setup', id: '', at: 20000, sump: 's1', spec }, ...readings]
  for (const [day, ofDay] of Map.groupBy(events, ({ at }) => Math.floor(at))) takeDay(shop, day, ofDay)
  return shop
}
const steady = [20000.3, 20003.3, 20007.3, 20010.3].map((at) => reading(at, 4))

test('a sump that was read the same again and again is expected to show that', () => {
  const { brix } = expectedReading(untouched(shopOf(steady), 's1', 20010.5), instrument)!
  expect(brix.low90).toBeLessThan(4)
  expect(brix.high90).toBeGreaterThan(4)
  expect(brix.high90 - brix.low90).toBeLessThan(0.8)
})

// What the straight line says must be what the estimate itself makes of a reading that surprises nobody.
test('the gain leads to the concentration that the estimate comes to once the reading is in', () => {
  const at = 20013.3
  const before = shopOf(steady)
  const { brix, gain } = expectedReading(untouched(before, 's1', at), instrument)!
  const { concentration } = estimateSump(before, 's1', at, []).now
  const read = brix.mean + 0.1
  const after = estimateSump(shopOf([...steady, { ...reading(at, read), seen: null }]), 's1', at, []).now.concentration
  expect(gain).toBeGreaterThan(0)
  expect(gain).toBeLessThan(2)
  expect(concentration.mean + gain * 0.1).toBeCloseTo(after.mean, 1)
  expect(Math.sqrt(concentration.sd ** 2 - (gain * brix.sd) ** 2)).toBeCloseTo(after.sd, 1)
})

test('a fluid whose scale nobody knows is expected to show nothing', () => {
  expect(expectedReading(untouched(shopOf(steady), 's1', 20011), { scales: new Map(), resolution: 0.1 })).toBeNull()
})

test('on a chart the reading is that of the chart', () => {
  const chart = [
    [0, 0],
    [4, 8],
    [8, 24],
  ] as const
  const { brix } = expectedReading(untouched(shopOf(steady), 's1', 20010.5), {
    scales: new Map([['f1', { chart }]]),
    resolution: 0.1,
  })!
  expect(brix.low90).toBeLessThan(4)
  expect(brix.high90).toBeGreaterThan(4)
})
