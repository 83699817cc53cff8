import { expect, test } from 'vitest'
import type { ShopEvent } from './events.ts'
import { learnPriors } from './learn-priors.ts'
import { copyShopEstimate, openShopEstimate, packShopEstimate, unpackShopEstimate } from './pack.ts'
import { publishedPriors } from './priors.ts'
import { addition, charge, mondayToFriday, reading, setup, shopOf, sumpOf, tell } from './testing.ts'

/** A few weeks with a misread, machine hours, an idle spell, a change-over and an unwritten pour. */
const first: ShopEvent[] = [
  setup('s', {}, 4),
  setup('t', { mark: null }, 4),
  charge('s', 4.3, { volume: 200, water: { hardness: 200, chloride: 40 } }),
  charge('t', 4.35),
  { kind: 'hours', id: 'h1', at: 4.4, sump: 's', hours: 100 },
  reading('s', 6.3, { brix: 8.2, seen: 190, hardness: { low: 100, high: 180 } }),
  reading('t', 6.31, { brix: 8, seen: 180 }),
  { kind: 'idle', id: 'i1', at: 7, sump: 't', from: 7, until: 9 },
  reading('s', 11.3, { brix: 82, seen: 175 }),
  { kind: 'hours', id: 'h2', at: 11.4, sump: 's', hours: 160 },
]
const second: ShopEvent[] = [
  addition('s', 12.4, { fluid: 'b' }),
  reading('s', 13.3, {
    brix: 8.1,
    scales: new Map([
      ['a', { factor: 1 }],
      ['b', { factor: 1.5 }],
    ]),
  }),
  reading('t', 13.32, { brix: 5, seen: 200 }),
  { kind: 'transfer', id: 't1', at: 14, sump: 's', to: 't', volume: 20 },
  reading('t', 18.3, { brix: 6, titration: 6.2 }),
]

test('a shop before its first record knows what is published', () => {
  expect(openShopEstimate(mondayToFriday)).toMatchObject({
    priors: publishedPriors,
    firstDay: null,
    tally: { readings: 0 },
    sumps: new Map(),
  })
})

test('an estimate kept as JSON comes back bit for bit', () => {
  const shop = shopOf([...first, ...second], { calendar: mondayToFriday })
  expect(sumpOf(shop).branches.length + sumpOf(shop).doubts.length).toBeGreaterThan(1)
  const back = unpackShopEstimate(JSON.parse(JSON.stringify(packShopEstimate(shop))))
  expect(back).toEqual(shop)
  for (const [id, sump] of shop.sumps) {
    for (const [i, { belief }] of sump.branches.entries()) {
      const found = back.sumps.get(id)!.branches[i]!.belief
      expect(new Uint8Array(found.mean.buffer)).toEqual(new Uint8Array(belief.mean.buffer))
      expect(new Uint8Array(found.cov.buffer)).toEqual(new Uint8Array(belief.cov.buffer))
    }
  }
})

test('gone on from what was kept it comes to what it would have come to', () => {
  const whole = shopOf([...first, ...second], { calendar: mondayToFriday })
  const kept = unpackShopEstimate(
    JSON.parse(JSON.stringify(packShopEstimate(shopOf(first, { calendar: mondayToFriday })))),
  )
  tell(kept, second)
  expect(kept).toEqual(whole)
})

test('what was learnt is kept with it', () => {
  const learnt = learnPriors(shopOf(first))
  const shop = shopOf(second, { priors: learnt })
  expect(unpackShopEstimate(JSON.parse(JSON.stringify(packShopEstimate(shop)))).priors).toEqual(learnt)
})

test('a copy is carried on without changing what it was made of', () => {
  const shop = shopOf(first, { calendar: mondayToFriday })
  const before = JSON.stringify(packShopEstimate(shop))
  const copy = copyShopEstimate(shop)
  expect(copy).toEqual(shop)
  tell(copy, second)
  expect(JSON.stringify(packShopEstimate(shop))).toBe(before)
  expect(JSON.stringify(packShopEstimate(copy))).not.toBe(before)
})

test('what comes back may be carried on without changing what was kept', () => {
  const packed = packShopEstimate(shopOf(first, { calendar: mondayToFriday }))
  const before = JSON.stringify(packed)
  tell(unpackShopEstimate(packed), second)
  expect(JSON.stringify(packed)).toBe(before)
})
