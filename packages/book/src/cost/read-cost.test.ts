import fc from 'fast-check'
import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'
import type { Cost } from './answer-types.ts'
import { type CostQuestion, readCost } from './read-cost.ts'

const fluids = [{ ...smallShop().fluids[0], pricePerLitre: 5 }]
const waters = [
  { id: 'tap', name: 'Tap water', kind: 'tap', hardness: 260, costPerLitre: 0.004 },
  { id: 'di', name: 'Deionised water', kind: 'deionised', hardness: 5, costPerLitre: 0.013 },
]
const sumps = [
  { id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240, machines: ['Mill 1'] },
  { id: 's2', name: 'Central', fluid: 'f1', fillVolume: 1000, machines: ['A', 'B', 'C'] },
]
let next = 0
const written = (kind: string, at: string, more: Record<string, unknown>) => {
  next += 1
  return { id: testId(next), at: `2026-${at}:00+01:00`, kind, sump: 's1', ...more }
}
const shopWith = (costs: Record<string, unknown>) => ({ ...smallShop().shop, costs })

async function costOf(
  entries: unknown[],
  more: Record<string, unknown> = {},
  question: Partial<CostQuestion> = {},
): Promise<Cost> {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop({ fluids, waters, sumps, entries, ...more })), testNow)
  const book = openBook(store, () => testNow)
  return book.ask((parts) => readCost(parts, { from: '2026-02-01', to: '2026-02-28', ...question }))
}

test('a pour costs its concentrate and its water, at the cent', async () => {
  const cost = await costOf([written('addition', '02-03T09:00', { volume: 60, strength: 13, water: 'di' })])
  // 7.8 L × 5 = 39.00; 52.2 L × 0.013 = 0.6786.
  expect(cost).toMatchObject({ cents: 3968, parts: { concentrate: 3900, water: 68 }, estimated: 0 })
  expect(cost.litres).toMatchObject({ mix: 60, concentrate: 7.8, water: 52.2 })
  // 52.2 × (0.013 − 0.004) = 0.4698
  expect(cost.treatedExtra).toBe(47)
  expect(cost.sentences).toEqual(['February 2026 cost €39.68: €39.00 concentrate and €0.68 water.'])
})

test('a price that changes later does not touch what was poured before', async () => {
  const dearer = {
    ...written('setup', '02-10T09:00', {
      changes: { pricePerLitre: 6 },
      was: { pricePerLitre: 5 },
      from: '2026-02-10',
    }),
    sump: undefined,
    about: { kind: 'fluid', id: 'f1' },
  }
  const pour = (at: string) => written('addition', at, { concentrate: 10 })
  // 10 × 5 before, 10 × 6 after.
  expect((await costOf([pour('02-03T09:00'), dearer, pour('02-20T09:00')])).parts.concentrate).toBe(11_000)
})

test('a lot has the price of its receipt, its withdrawn receipt none', async () => {
  const receipt = {
    ...written('receipt', '01-03T09:00', { fluid: 'f1', lot: 'B-7', litres: 200, pricePerLitre: 4 }),
    sump: undefined,
    about: { kind: 'stock', id: 'f1' },
  }
  const pour = written('addition', '02-03T09:00', { concentrate: 10, lot: 'B-7' })
  expect((await costOf([receipt, pour])).parts.concentrate).toBe(4000)
  const aside = { ...written('void', '02-04T09:00', { entry: receipt.id }), sump: undefined }
  expect((await costOf([receipt, pour, aside])).parts.concentrate).toBe(5000)
})

test('a metered pour is the difference of its counts, the one before the span included', async () => {
  const counted = (at: string, count: number) =>
    written('addition', at, { sump: 's2', strength: 5, water: 'tap', meter: { id: 'm', count } })
  const meters = [{ id: 'm', name: 'Hose', litresPerCount: 1, sump: 's2' }]
  const cost = await costOf([counted('01-20T09:00', 400), counted('02-03T09:00', 500), counted('02-10T09:00', 540)], {
    meters,
  })
  expect(cost.litres).toMatchObject({ mix: 140, concentrate: 7 })
})

test('a fill to the mark is reckoned from the level read before it, and stands apart', async () => {
  const cost = await costOf([
    written('reading', '02-03T09:00', { volume: 160 }),
    written('addition', '02-03T09:10', { toMark: true, strength: 10, water: 'tap' }),
    written('addition', '02-09T09:10', { toMark: true, strength: 10, water: 'tap' }),
  ])
  // 40 L: 4 L × 5 and 36 L × 0.004 = 0.144.
  expect(cost).toMatchObject({ cents: 2014, estimated: 2014 })
  expect(cost.litres).toMatchObject({ mix: 0, byLevel: { mix: 40, concentrate: 4, fills: 1 }, unmeasured: 1 })
  expect(cost.gaps[0]).toMatchObject({ what: 'fill-unmeasured', count: 1, names: ['Mill 1'] })
})

test('nothing has a price of its own: what nobody set is not counted, and said so', async () => {
  const cost = await costOf([
    written('reading', '02-03T09:00', { brix: 5 }),
    written('cleanout', '02-04T09:00', { hours: 3, cleanerPercent: 2 }),
    {
      ...written('pickup', '02-05T09:00', { stream: 'Used emulsion', litres: 900 }),
      sump: undefined,
      about: { kind: 'waste' },
    },
    written('addition', '02-06T09:00', { additive: { name: 'Booster', litres: 2 } }),
  ])
  expect(cost.cents).toBe(0)
  expect(cost.gaps.map(({ what, count }) => [what, count]).sort()).toEqual([
    ['additive-price', 1],
    ['cleaner-price', 1],
    ['labour', 1],
    ['machine-hours', 1],
    ['minutes-per-stop', 2],
    ['waste-price', 1],
  ])
  expect(cost.assumptions.every(({ value }) => value === null)).toBe(true)
})

const costs = {
  labourPerHour: 42,
  machinePerHour: 60,
  minutesPerStop: 5,
  cleanerPerLitre: 7,
  wastePerLitre: 0.3,
  wasteStreams: [{ stream: 'Sludge', perKilogram: 0.5 }],
  wastePerPickup: 90,
  additives: [{ name: 'Booster', perLitre: 11 }],
}
const pickup = (at: string, more: Record<string, unknown>) => ({
  ...written('pickup', at, more),
  sump: undefined,
  about: { kind: 'waste' },
})

test('work, cleaner, downtime, waste and additives cost what the shop says', async () => {
  const cost = await costOf(
    [
      written('reading', '02-03T09:00', { brix: 5 }),
      written('skim', '02-03T09:15', { litres: 2 }),
      written('cleanout', '02-04T09:00', { hours: 3, cleanerPercent: 2, wasteVolume: 210, sump: 's2' }),
      pickup('02-05T09:00', { stream: 'Used emulsion', litres: 900 }),
      pickup('02-05T09:05', { stream: 'sludge', litres: 80, kilograms: 100 }),
      written('addition', '02-06T09:00', { additive: { name: 'booster', litres: 2 } }),
    ],
    { shop: shopWith(costs) },
  )
  expect(cost.parts).toEqual({
    concentrate: 0,
    water: 0,
    // 2 × 11
    additives: 2200,
    // 1000 L × 2 % × 7 + 3 × 42 + 3 × 3 machines × 60
    cleanouts: 80_600,
    // Two stops (the skim came 15 minutes after the reading, the additive days later) of 5 minutes at 42
    rounds: 700,
    // 900 × 0.30 + 100 × 0.50 + 2 × 90
    waste: 50_000,
  })
  expect(cost.sumps.map(({ sump, cents, wasteLitres, stops }) => [sump, cents, wasteLitres, stops])).toEqual([
    ['s1', 2900, 2, 2],
    ['s2', 80_600, 210, 0],
    [null, 50_000, 0, 0],
  ])
})

test('machine hours are differences of the counter, each at its later reading; a count that runs back counts nothing', async () => {
  const hours = (at: string, machineHours: number) => written('reading', at, { machineHours })
  const entries = [
    hours('01-15T09:00', 1000),
    hours('02-05T09:00', 1100),
    hours('02-12T09:00', 20),
    hours('02-20T09:00', 60),
    written('addition', '02-20T10:00', { concentrate: 7 }),
  ]
  // 100 + 40 hours for 35.00: 25 cents an hour.
  expect((await costOf(entries)).sumps[0]).toMatchObject({ machineHours: 140, cents: 3500, centsPerHour: 25 })
})

test('one sump alone has its own costs and gaps, without those of the shop', async () => {
  const entries = [
    written('addition', '02-03T09:00', { concentrate: 1 }),
    written('addition', '02-03T09:00', { concentrate: 2, sump: 's2' }),
    pickup('02-05T09:00', { stream: 'Used emulsion', litres: 900 }),
  ]
  const cost = await costOf(entries, {}, { sump: 's2' })
  expect(cost).toMatchObject({ sump: 's2', cents: 1000, sumps: [{ sump: 's2' }] })
  expect(cost.gaps.map(({ what }) => what)).toEqual(['minutes-per-stop'])
  await expect(costOf([], {}, { sump: 's9' })).rejects.toMatchObject({ code: 'not-found' })
})

test('days are those of the shop, its first and last included', async () => {
  const pour = (at: string) => ({ ...written('addition', '02-01T00:00', { concentrate: 1 }), at })
  const cost = await costOf([
    pour('2026-01-31T22:59:59Z'),
    pour('2026-01-31T23:00:00Z'),
    pour('2026-02-28T22:59:59Z'),
    pour('2026-02-28T23:00:00Z'),
  ])
  expect(cost.litres.concentrate).toBe(2)
})

test('a span that ends before it begins, or has no end, is refused', async () => {
  await expect(costOf([], {}, { to: '2026-01-31' })).rejects.toMatchObject({ code: 'refused-input' })
  await expect(costOf([], {}, { to: '2036-01-31' })).rejects.toMatchObject({ code: 'refused-input' })
})

test('pieces add up to the total, whichever way they are summed, and months to the whole', async () => {
  const day = fc.integer({ min: 1, max: 28 }).map((n) => String(n).padStart(2, '0'))
  const pour = fc.record({
    day,
    month: fc.constantFrom('01', '02'),
    sump: fc.constantFrom('s1', 's2'),
    volume: fc.double({ min: 0.1, max: 300, noNaN: true }),
    strength: fc.double({ min: 0, max: 20, noNaN: true }),
    water: fc.constantFrom('tap', 'di'),
  })
  await fc.assert(
    fc.asyncProperty(fc.array(pour, { minLength: 1, maxLength: 12 }), async (pours) => {
      const entries = pours.map(({ day, month, ...more }) => written('addition', `${month}-${day}T09:00`, more))
      const whole = await costOf(entries, { shop: shopWith(costs) }, { from: '2026-01-01' })
      const total = (list: { cents: number }[]) => list.reduce((sum, { cents }) => sum + cents, 0)
      const ofParts = (parts: Cost['parts']) => Object.values(parts).reduce((sum, cents) => sum + cents, 0)
      expect(ofParts(whole.parts)).toBe(whole.cents)
      expect(total(whole.sumps)).toBe(whole.cents)
      expect(total(whole.months)).toBe(whole.cents)
      for (const one of [...whole.sumps, ...whole.months]) expect(ofParts(one.parts)).toBe(one.cents)
      const january = await costOf(entries, { shop: shopWith(costs) }, { from: '2026-01-01', to: '2026-01-31' })
      expect(january.cents).toBe(whole.months[0]!.cents)
    }),
    { numRuns: 10 },
  )
})
