import fc from 'fast-check'
import { expect, test } from 'vitest'
import { estimateSump } from './ahead/estimate-sump.ts'
import type { ShopEvent } from './events.ts'
import { packShopEstimate } from './pack.ts'
import { addition, charge, reading, setup, shopOf, sumpOf } from './testing.ts'

const allNumbers = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(allNumbers)
      : []

test('records of a sump that nobody described are left aside', () => {
  const shop = shopOf([reading('nowhere', 1, { brix: 8 }), setup('s'), reading('s', 1.1, { brix: 8 })])
  expect([...shop.sumps.keys()]).toEqual(['s'])
})

test('the first day with a record is kept', () => {
  expect(shopOf([]).firstDay).toBe(null)
  expect(shopOf([setup('s', {}, 3.5), reading('s', 9, { brix: 8 })]).firstDay).toBe(3)
})

test('days without records may be told or left out', () => {
  const told = shopOf([setup('s'), reading('s', 1.4, { brix: 8, seen: 190 }), reading('s', 8.4, { brix: 8.5 })])
  const withEmpty = shopOf([setup('s'), reading('s', 1.4, { brix: 8, seen: 190 })])
  expect(estimateSump(withEmpty, 's', 8, []).now.volume.mean).toBeLessThan(190)
  expect(told.sumps.get('s')!.at).toBe(8.4)
})

test.each<[string, ShopEvent[]]>([
  ['more drawn off than there is', [{ kind: 'drawoff', id: 'd', at: 3, sump: 's', volume: 5000 }]],
  ['a pour larger than any sump', [addition('s', 3, { amount: 1e6 })]],
  [
    'two charges at once',
    [charge('s', 3, { volume: 200 }), charge('s', 3, { volume: 190, fluid: 'b', heldBack: 400 })],
  ],
  ['a charge of nothing', [charge('s', 3, { volume: 0, strength: 0 })]],
  ['a transfer into itself', [{ kind: 'transfer', id: 't', at: 3, sump: 's', to: 's', volume: 50 }]],
  ['a transfer into nowhere', [{ kind: 'transfer', id: 't', at: 3, sump: 's', to: 'nowhere', volume: 50 }]],
  ['a clock years ahead', [reading('s', 9000, { brix: 8, seen: 190 }), reading('s', 9001, { brix: 3 })]],
  ['a reading of nothing', [reading('s', 3, { brix: 0, titration: 0, hardness: 0, chloride: 0, seen: 0 })]],
  ['a reading off every scale', [reading('s', 3, { brix: 90, titration: 100, hardness: 1e5, seen: 1e5 })]],
  ['classes without an end', [reading('s', 3, { hardness: { atLeast: 1e4 }, chloride: { below: 0 } })]],
  ['a standstill that ends before it begins', [{ kind: 'idle', id: 'i', at: 3, sump: 's', from: 9, until: 1 }]],
  [
    'hours that run backwards',
    [
      { kind: 'hours', id: 'h1', at: 2, sump: 's', hours: 100 },
      { kind: 'hours', id: 'h2', at: 3, sump: 's', hours: 90 },
      { kind: 'hours', id: 'h3', at: 4, sump: 's', hours: 91 },
    ],
  ],
  ['a verdict on nothing', [{ kind: 'verdict', id: 'v', at: 3, sump: 's', entries: ['x'], answer: 'misread' }]],
])('%s: figures stay figures', (_, events) => {
  const shop = shopOf([
    setup('s'),
    reading('s', 1, { brix: 8, seen: 190 }),
    ...events,
    reading('s', 10_000, { brix: 7 }),
  ])
  const answer = estimateSump(shop, 's', 10_000, [1, 7, 14])
  expect(allNumbers(answer).every(Number.isFinite)).toBe(true)
  const { concentration, volume } = answer.now
  expect(concentration.low90).toBeLessThanOrEqual(concentration.high90)
  expect(volume.low90).toBeGreaterThanOrEqual(0)
})

const at = fc.double({ min: 0, max: 80, noNaN: true })
const litres = fc.option(fc.double({ min: 0, max: 500, noNaN: true }))
const percent = fc.option(fc.double({ min: 0, max: 100, noNaN: true }))
const anyEvent: fc.Arbitrary<ShopEvent> = fc.constantFrom('s', 't').chain((sump) =>
  fc.oneof(
    fc
      .tuple(at, fc.double({ min: 0, max: 40, noNaN: true }), litres)
      .map(([t, brix, seen]) => reading(sump, t, { brix, seen })),
    fc.tuple(at, percent).map(([t, titration]) => reading(sump, t, { titration })),
    fc.tuple(at, litres, percent).map(([t, amount, strength]) => addition(sump, t, { amount, strength })),
    fc.tuple(at, percent).map(([t, strength]) => addition(sump, t, { strength, fluid: 'b' })),
    fc.tuple(at, litres, percent).map(([t, volume, strength]) => charge(sump, t, { volume, strength })),
    fc.tuple(at, litres).map(([t, volume]): ShopEvent => ({ kind: 'drawoff', id: `d${t}`, at: t, sump, volume })),
    fc
      .tuple(at, litres)
      .map(([t, volume]): ShopEvent => ({ kind: 'transfer', id: `t${t}`, at: t, sump, to: 't', volume })),
    fc.tuple(at, at).map(([t, until]): ShopEvent => ({ kind: 'idle', id: `i${t}`, at: t, sump, from: t - 5, until })),
    fc
      .constantFrom('skim', 'job', 'cleanout')
      .chain((kind) => at.map((t): ShopEvent => ({ kind, id: `${kind}${t}`, at: t, sump }))),
  ),
)

test('whatever is written, nothing is less than nothing, and every belief stays a covariance', () => {
  fc.assert(
    fc.property(fc.array(anyEvent, { maxLength: 25 }), (events) => {
      const shop = shopOf([setup('s'), setup('t', { mark: null }), ...events.toSorted((a, b) => a.at - b.at)])
      for (const id of ['s', 't']) {
        for (const { belief } of sumpOf(shop, id).branches) {
          const { size: n, mean, cov } = belief
          expect([...mean, ...cov].every(Number.isFinite)).toBe(true)
          for (let i = 0; i < n; i++) {
            expect(cov[i * (n + 1)]).toBeGreaterThanOrEqual(0)
            for (let j = 0; j < i; j++) {
              expect(cov[i * n + j]).toBe(cov[j * n + i])
              const most = Math.sqrt(cov[i * (n + 1)]! * cov[j * (n + 1)]!)
              expect(Math.abs(cov[i * n + j]!)).toBeLessThanOrEqual(most * (1 + 1e-6) + 1e-9)
            }
          }
        }
        const { now } = estimateSump(shop, id, 90, [7])
        expect(allNumbers(now).every((value) => Number.isFinite(value) && value >= 0)).toBe(true)
      }
    }),
    { numRuns: 150 },
  )
})

test('the same records come to the same estimate', () => {
  const events = [
    setup('s'),
    setup('t'),
    reading('s', 2.3, { brix: 8.1, seen: 188 }),
    reading('t', 2.31, { brix: 3.1, seen: 180 }),
    addition('s', 2.4, { amount: 12 }),
    reading('s', 9.3, { brix: 11, seen: 150 }),
  ]
  expect(JSON.stringify(packShopEstimate(shopOf(events)))).toBe(JSON.stringify(packShopEstimate(shopOf(events))))
})
