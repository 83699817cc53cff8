import { expect, test } from 'vitest'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { readToday } from './read-today.ts'

async function todayOf(entries: unknown[], more: Record<string, unknown> = {}, at = testNow) {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop({ entries, ...more })), testNow)
  return readToday(store, { at })
}
const only = async (...args: Parameters<typeof todayOf>) => {
  const { items, calm } = await todayOf(...args)
  return [...items, ...calm][0]!
}
const entry = (n: number, kind: string, more: Record<string, unknown>, at = '2026-03-03T09:00:00Z') => ({
  id: testId(n),
  at,
  kind,
  sump: 's1',
  ...more,
})

// 3.5 °Brix × 1.6 = 5.6 % in 162 L hold 9.072 L; 200 L at 8 % hold 16: 6.928 L in 38 L are 18.23 %.
test('a lean sump below its mark is listed with what to pour, from the softest water', async () => {
  const item = await only([testReading(1, { brix: 3.5, volume: 162 })])
  expect(item).toMatchObject({ condition: 'lean', action: 'top-up', dataAt: '2026-03-03T08:30:00.000Z' })
  expect(item.recipe.add?.volume).toBeCloseTo(38, 10)
  expect(item.recipe.add?.concentrate).toBeCloseTo(6.928, 10)
  expect(item.recipe.add?.waters).toEqual([{ id: 'di', volume: expect.closeTo(31.072, 10) }])
  expect(item.words.headline).toBe('Add 38 L at 18.2 %')
})

// 7.5 × 1.6 = 12 % in 150 L; with 50 L of water 9 %.
test('a rich sump with room gets water', async () => {
  const item = await only([testReading(1, { brix: 7.5, volume: 150 })])
  expect(item).toMatchObject({ condition: 'rich', action: 'water-only' })
  expect(item.recipe.result?.concentration).toBeCloseTo(9, 10)
})

test('once it was poured the sump is off the list', async () => {
  const { items, calm } = await todayOf([
    testReading(1, { brix: 3.5, volume: 162 }),
    entry(2, 'addition', { volume: 38, strength: 18.23157894736842, water: 'di' }),
  ])
  expect(items).toEqual([])
  expect(calm).toMatchObject([{ sump: 's1', condition: 'in-order', action: 'none' }])
  expect(calm[0]!.concentration?.mean).toBeCloseTo(8, 10)
  expect(calm[0]!.volume?.mean).toBeCloseTo(200, 10)
})

test('a withdrawn reading counts no more', async () => {
  const item = await only([
    testReading(1, { brix: 5, volume: 200, at: '2026-03-03T07:00:00Z' }),
    testReading(2, { brix: 3, volume: 150 }),
    { id: testId(3), at: '2026-03-03T09:00:00Z', kind: 'void', entry: testId(2) },
  ])
  expect(item).toMatchObject({ condition: 'in-order', lastStrength: { text: '5.0 °Brix', concentration: 8 } })
})

test('entries after the time of asking do not count', async () => {
  const early = new Date('2026-03-03T08:00:00Z')
  const item = await only(
    [testReading(1, { brix: 5, volume: 200, at: '2026-03-03T07:00:00Z' }), testReading(2, { brix: 3 })],
    {},
    early,
  )
  expect(item.concentration?.mean).toBeCloseTo(8, 10)
})

test('the factor of the day of the reading counts', async () => {
  const fluids = [
    {
      ...smallShop().fluids[0],
      factors: [
        { from: '2026-01-01', brixFactor: 1.6 },
        { from: '2026-03-02', brixFactor: 2 },
      ],
    },
  ]
  expect((await only([testReading(1)], { fluids })).concentration?.mean).toBeCloseTo(10, 10)
  expect((await only([testReading(1, { at: '2026-03-01T08:00:00Z' })], { fluids })).concentration?.mean).toBeCloseTo(
    8,
    10,
  )
})

test('a factor begins with its day in the shop, not in Greenwich', async () => {
  const fluids = [{ ...smallShop().fluids[0], factors: [{ from: '2026-03-03', brixFactor: 2 }] }]
  // 23:30 UTC on the 2nd is half past midnight on the 3rd in Berlin.
  expect((await only([testReading(1, { at: '2026-03-02T23:30:00Z' })], { fluids })).concentration?.mean).toBeCloseTo(
    10,
    10,
  )
  expect((await only([testReading(1, { at: '2026-03-02T22:30:00Z' })], { fluids })).concentration?.mean).toBeCloseTo(
    8,
    10,
  )
})

test('a lot with a factor of its own has its own, another lot the product’s', async () => {
  const fluids = [{ ...smallShop().fluids[0], factors: [{ lot: 'L7', brixFactor: 2 }] }]
  const charged = (lot: string) => [
    entry(1, 'charge', { volume: 200, strength: 8, lot }, '2026-03-01T09:00:00Z'),
    testReading(2),
  ]
  expect((await only(charged('L7'), { fluids })).concentration?.mean).toBeCloseTo(10, 10)
  expect((await only(charged('L8'), { fluids })).concentration?.mean).toBeCloseTo(8, 10)
})

test('a mark that moves next month has not moved yet', async () => {
  const moves = {
    id: testId(9),
    at: '2026-03-02T09:00:00Z',
    kind: 'setup',
    about: { kind: 'sump', id: 's1' },
    changes: { fillVolume: 230 },
    was: { fillVolume: 200 },
    from: '2026-04-01',
  }
  const sumps = [{ ...smallShop().sumps[0], fillVolume: 230 }]
  expect((await only([testReading(1), moves], { sumps })).bench.fillVolume).toBe(200)
  expect((await only([testReading(1), moves], { sumps }, new Date('2026-04-01T12:00:00Z'))).bench.fillVolume).toBe(230)
})

test('what the pumps hold out counts while they run', async () => {
  const sumps = [{ ...smallShop().sumps[0], holdUp: 25 }]
  expect((await only([testReading(1, { volume: 150, pumps: 'running' })], { sumps })).volume?.mean).toBe(175)
})

test('a level in millimetres is read from the dip table', async () => {
  const sumps = [
    {
      ...smallShop().sumps[0],
      dipTable: [
        [0, 0],
        [100, 80],
        [300, 240],
      ],
    },
  ]
  const item = await only([testReading(1, { volume: undefined, level: 200 })], { sumps })
  expect(item.volume?.mean).toBe(160)
  expect(item.lastLevel?.text).toBe('200 mm')
})

// 100 L at 10 % moved into 100 L at 5 % leave 100 − 50 and 150 L at (5 × 100 + 10 × 50) / 150.
test('a transfer takes from one sump and brings to another', async () => {
  const sumps = [smallShop().sumps[0], { id: 's2', name: 'Mill 2', fluid: 'f1', fillVolume: 200 }]
  const { items, calm } = await todayOf(
    [
      entry(1, 'charge', { volume: 100, strength: 10 }),
      { ...entry(2, 'charge', { volume: 100, strength: 5 }), sump: 's2' },
      entry(3, 'transfer', { volume: 50, to: 's2' }, '2026-03-03T09:30:00Z'),
    ],
    { sumps },
  )
  const of = (id: string) => [...items, ...calm].find(({ sump }) => sump === id)!
  expect(of('s1').volume?.mean).toBe(50)
  expect(of('s2').volume?.mean).toBe(150)
  expect(of('s2').concentration?.mean).toBeCloseTo(1000 / 150, 10)
})

// Heel: 20 L at 8 % and 180 L at 6 % make 200 L at 6.2 %.
test('a charge keeps the heel that was held back', async () => {
  const item = await only([
    entry(1, 'charge', { volume: 200, strength: 8 }, '2026-03-01T09:00:00Z'),
    entry(2, 'charge', { volume: 180, strength: 6, heldBack: 20 }),
  ])
  expect(item.volume?.mean).toBe(200)
  expect(item.concentration?.mean).toBeCloseTo(6.2, 10)
})

test('a meter pours the difference of its counts', async () => {
  const meters = [{ id: 'm', name: 'Hose', litresPerCount: 2 }]
  const item = await only(
    [
      entry(1, 'charge', { volume: 100, strength: 8 }),
      entry(2, 'addition', { meter: { id: 'm', count: 500 }, strength: 0 }, '2026-03-03T09:10:00Z'),
      testReading(3, { at: '2026-03-03T09:15:00Z', volume: 100 }),
      entry(4, 'addition', { meter: { id: 'm', count: 525 }, strength: 0 }, '2026-03-03T09:20:00Z'),
    ],
    { meters },
  )
  expect(item.volume?.mean).toBe(150)
})

test('filled to the mark without measuring, the volume is that of the mark', async () => {
  const item = await only([
    testReading(1, { brix: 5, volume: 150 }),
    entry(2, 'addition', { toMark: true, strength: 4 }),
  ])
  expect(item.volume?.mean).toBeCloseTo(200, 10)
  expect(item.concentration?.mean).toBeCloseTo((8 * 150 + 4 * 50) / 200, 10)
})

test('without a level the strength is judged, and what to pour is shown for a few levels', async () => {
  const item = await only([testReading(1, { brix: 3, volume: undefined })])
  expect(item).toMatchObject({
    condition: 'lean',
    action: 'measure-first',
    words: { headline: 'Read the level first' },
  })
  expect(item.alternatives).toHaveLength(3)
})

test('a sump nobody read for more than a week is to be read', async () => {
  const at = (day: string) => [testReading(1, { volume: 200, at: `2026-02-${day}T09:00:00Z` })]
  expect(await only(at('24'))).toMatchObject({ condition: 'in-order' })
  expect(await only(at('23'))).toMatchObject({ condition: 'unread', words: { headline: 'Read it' } })
})

test('a fluid without a factor is asked for it', async () => {
  const fluids = [{ id: 'f1', name: 'F', limits: { concentration: { low: 6, target: 8, high: 10 } } }]
  expect(await only([testReading(1)], { fluids })).toMatchObject({
    condition: 'measure-first',
    words: { headline: "Tell the book the fluid's refractometer factor first" },
  })
})

test('a straight oil gets no water and is no business of the list', async () => {
  const fluids = [{ id: 'f1', name: 'Oil', class: 'straight-oil' }]
  const { items, calm } = await todayOf([testReading(1, { brix: undefined })], { fluids })
  expect(items).toEqual([])
  expect(calm).toMatchObject([{ action: 'refuse', condition: 'straight-oil' }])
})

test('the list begins with the level under the suction, then lean by distance, then rich', async () => {
  const sump = smallShop().sumps[0]!
  const sumps = [1, 2, 3, 4].map((n) => ({ ...sump, id: `s${n}`, name: `Mill ${n}`, minVolume: 60 }))
  const read = (n: number, brix: number, volume: number) => testReading(n, { sump: `s${n}`, brix, volume })
  const { items } = await todayOf([read(1, 7.5, 150), read(2, 3.5, 150), read(3, 2.5, 150), read(4, 5, 50)], { sumps })
  expect(items.map(({ sump: id }) => id)).toEqual(['s4', 's3', 's2', 's1'])
})

test('the sump’s own limits win over its fluid’s', async () => {
  const sumps = [{ ...smallShop().sumps[0], limits: { concentration: { low: 3, target: 4, high: 5 } } }]
  expect(await only([testReading(1, { brix: 5, volume: 150 })], { sumps })).toMatchObject({ condition: 'rich' })
})

test('the cart carries what the list pours, and the fresh note of the last shift is read out', async () => {
  const note = {
    id: testId(9),
    at: '2026-03-02T22:00:00Z',
    kind: 'handover',
    about: { kind: 'shop' },
    text: 'Mill 1 smelled',
  }
  const { cart, lede } = await todayOf([testReading(1, { brix: 3.5, volume: 162 }), note])
  expect(cart.waters).toEqual([{ id: 'di', name: 'Deionised water', volume: expect.closeTo(31.072, 10) }])
  expect(cart.concentrates).toEqual([{ fluid: 'f1', name: 'Semi 1', litres: expect.closeTo(6.928, 10) }])
  expect(lede).toBe(
    '1 sump to fill. For the cart: 31.1 L of deionised water and 6.9 L of Semi 1 concentrate. Last shift’s note: “Mill 1 smelled”',
  )
})

test('a draw-off larger than the volume leaves finite figures', async () => {
  const item = await only([testReading(1), entry(2, 'drawoff', { volume: 9000 })])
  expect(item.volume?.mean).toBe(0)
  expect(Number.isFinite(item.recipe.result?.concentration)).toBe(true)
})

// 80 °Brix × 1.6 would be 128 %.
test('a reading of more than pure concentrate is read again before anything is poured', async () => {
  const item = await only([testReading(1, { brix: 80 })])
  expect(item).toMatchObject({ action: 'measure-first', condition: 'measure-first' })
})

test('readings older than two months still count where nothing younger was read', async () => {
  const item = await only([
    testReading(1, { brix: 3.5, volume: 162, at: '2025-06-01T08:00:00Z' }),
    entry(2, 'addition', { volume: 8, strength: 0 }),
  ])
  expect(item.volume?.mean).toBeCloseTo(170, 10)
  expect(item.concentration?.mean).toBeCloseTo((5.6 * 162) / 170, 10)
})

test('the fluid of a charge long ago still counts', async () => {
  const fluids = [
    ...smallShop().fluids,
    { id: 'f2', name: 'Other', brixFactor: 2, limits: { concentration: { low: 6, target: 8, high: 10 } } },
  ]
  const item = await only(
    [entry(1, 'charge', { fluid: 'f2', volume: 200, strength: 8 }, '2025-06-01T08:00:00Z'), testReading(2)],
    { fluids },
  )
  expect(item.fluid.id).toBe('f2')
  expect(item.concentration?.mean).toBeCloseTo(10, 10)
})

test('the count of a meter long ago still counts', async () => {
  const meters = [{ id: 'm', name: 'Hose', litresPerCount: 2 }]
  const metered = (n: number, count: number, at: string) =>
    entry(n, 'addition', { meter: { id: 'm', count }, strength: 8 }, at)
  const entries = [
    metered(1, 500, '2025-06-01T08:00:00Z'),
    testReading(2, { volume: 100 }),
    metered(3, 520, '2026-03-03T09:40:00Z'),
  ]
  expect((await only(entries, { meters })).volume?.mean).toBe(140)
})

test('entries that name unknown sumps are counted as quarantined', async () => {
  const { quarantined } = await todayOf([], { quarantine: [testReading(1, { sump: 'elsewhere' })] })
  expect(quarantined).toBe(1)
})
