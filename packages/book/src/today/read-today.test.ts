import { quantile95 } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'

/** How where a sump stands is estimated is held elsewhere: these tests hold what the list makes of it. */
async function todayOf(entries: unknown[], more: Record<string, unknown> = {}, at = testNow) {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop({ entries, ...more })), testNow)
  return openBook(store, () => at).today({ at })
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

/** Where a pour of a strength leaves a sump: concentrate there and concentrate poured, over both volumes. */
const mixed = (volume: number, concentration: number, pour: { volume: number; strength: number }) =>
  (volume * concentration + pour.volume * pour.strength) / (volume + pour.volume)

// 3.5 °Brix × 1.6 = 5.6 %, less what oil and dirt usually feign; what is poured must come out of the estimate by plain mixing.
test('a lean sump below its mark is listed with what to pour, from the softest water', async () => {
  const item = await only([testReading(1, { brix: 3.5, volume: 162 })])
  expect(item).toMatchObject({ condition: 'lean', action: 'top-up', dataAt: '2026-03-03T08:30:00.000Z' })
  const { concentration, volume, recipe } = item
  expect(concentration!.mean).toBeGreaterThan(5)
  expect(concentration!.mean).toBeLessThan(5.8)
  expect(volume!.mean).toBeGreaterThan(158)
  expect(volume!.mean).toBeLessThan(170)
  expect(volume!.mean + recipe.add!.volume).toBeCloseTo(200, 6)
  expect(recipe.result!.concentration).toBeCloseTo(mixed(volume!.mean, concentration!.mean, recipe.add!), 10)
  expect(recipe.add!.waters).toEqual([{ id: 'di', volume: expect.closeTo(recipe.add!.water, 10) }])
  expect(item.sentence).toMatch(/^Stands at 5\.\d % \(\d\.\d–\d\.\d\) in about 16\d L of 200 L\.$/)
  expect(item.why).toMatch(
    /^Now .*, under its band of 6\.0 % to 10\.0 %\. .*Left alone it stands at \d\.\d % in a week\./,
  )
})

// 7.5 × 1.6 = 12 % in 150 L.
test('a rich sump with room gets water', async () => {
  const item = await only([testReading(1, { brix: 7.5, volume: 150 })])
  expect(item).toMatchObject({ condition: 'rich', action: 'water-only', recipe: { add: { strength: 0 } } })
})

test('once it was poured the sump is off the list', async () => {
  const { items, calm } = await todayOf([
    testReading(1, { brix: 3.5, volume: 162 }),
    entry(2, 'addition', { volume: 38, strength: 18.2, water: 'di' }),
  ])
  expect(items).toEqual([])
  expect(calm).toMatchObject([{ sump: 's1', condition: 'in-order', action: 'none' }])
  expect(calm[0]!.ahead).toEqual({
    drift: expect.stringMatching(/^Left alone it stands at \d\.\d % in a week\.$/),
    crossing: expect.stringMatching(/^It likely leaves its band on .*, by .* at the earliest\.$/),
    check: expect.stringMatching(/^Next check on .*\.$/),
  })
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
  expect(item.lastStrength?.concentration).toBe(8)
  expect(item.concentration?.mean).toBeGreaterThan(7)
})

const read = async (...args: Parameters<typeof todayOf>) => (await only(...args)).lastStrength?.concentration

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
  expect(await read([testReading(1)], { fluids })).toBeCloseTo(10, 10)
  expect(await read([testReading(1, { at: '2026-03-01T08:00:00Z' })], { fluids })).toBeCloseTo(8, 10)
})

test('a factor begins with its day in the shop, not in Greenwich', async () => {
  const fluids = [{ ...smallShop().fluids[0], factors: [{ from: '2026-03-03', brixFactor: 2 }] }]
  // 23:30 UTC on the 2nd is half past midnight on the 3rd in Berlin.
  expect(await read([testReading(1, { at: '2026-03-02T23:30:00Z' })], { fluids })).toBeCloseTo(10, 10)
  expect(await read([testReading(1, { at: '2026-03-02T22:30:00Z' })], { fluids })).toBeCloseTo(8, 10)
})

test('a lot with a factor of its own has its own, another lot the product’s', async () => {
  const fluids = [{ ...smallShop().fluids[0], factors: [{ lot: 'L7', brixFactor: 2 }] }]
  const charged = (lot: string) => [
    entry(1, 'charge', { volume: 200, strength: 8, lot }, '2026-03-01T09:00:00Z'),
    testReading(2),
  ]
  expect(await read(charged('L7'), { fluids })).toBeCloseTo(10, 10)
  expect(await read(charged('L8'), { fluids })).toBeCloseTo(8, 10)
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

test('a level in millimetres is shown as it was read', async () => {
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
  expect(item.lastLevel?.text).toBe('200 mm')
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

test('a sump of which nothing was written is asked for everything, and nothing is made up', async () => {
  expect(await only([])).toMatchObject({
    condition: 'measure-first',
    concentration: null,
    volume: null,
    expected: null,
    inAWeek: null,
    sentence: 'Strength not known, level not known.',
    ahead: { drift: '', crossing: '', check: 'Nobody has read its strength yet.' },
  })
})

/** Full, at its target, and losing little: read again and again, so that nothing is expected of the next days. */
const calmWeeks = (until: string) =>
  Array.from({ length: 12 }, (_, i) =>
    testReading(i + 1, { volume: 200, at: new Date(Date.parse(until) - (11 - i) * 2 * 86_400_000).toISOString() }),
  )
const wide = {
  fluids: [{ ...smallShop().fluids[0], limits: { concentration: { low: 3, target: 8, high: 16 } } }],
}

test('a sump that nobody read for a week is to be read', async () => {
  expect(await only(calmWeeks('2026-02-25T09:00:00Z'), wide)).toMatchObject({
    condition: 'in-order',
    nextCheck: { on: '2026-03-04', because: 'rule' },
  })
  expect(await only(calmWeeks('2026-02-24T09:00:00Z'), wide)).toMatchObject({
    condition: 'unread',
    words: { headline: 'Read it' },
    nextCheck: { on: '2026-03-03', because: 'rule' },
  })
})

test('a shop that reads every three days is told every three days', async () => {
  const shop = { ...smallShop().shop, readEveryDays: 3 }
  expect(await only(calmWeeks('2026-02-28T09:00:00Z'), { ...wide, shop })).toMatchObject({
    condition: 'unread',
    nextCheck: { on: '2026-03-03', because: 'rule' },
  })
})

test('a sump near the edge of its band is read sooner than the rule asks, but not twice a day', async () => {
  // About 8 % under an upper end of 9.2 %: it rises when nothing is added.
  const narrow = { fluids: [{ ...smallShop().fluids[0], limits: { concentration: { low: 6, target: 8, high: 9.2 } } }] }
  const item = await only([testReading(1, { volume: 200 })], narrow)
  expect(item.nextCheck).toMatchObject({ because: 'band' })
  expect(item.nextCheck!.on > '2026-03-03' && item.nextCheck!.on < '2026-03-10').toBe(true)
  expect(item.condition).not.toBe('unread')
  expect(item.ahead.check).toContain('before it may leave its band')
})

/** A charge, two readings that fit it, and one with a digit too many. */
const misread = [
  entry(1, 'charge', { volume: 200, strength: 8 }, '2026-02-20T09:00:00Z'),
  testReading(2, { brix: 5.1, at: '2026-02-23T09:00:00Z' }),
  testReading(3, { brix: 5.2, at: '2026-02-26T09:00:00Z' }),
  testReading(4, { brix: 14.2 }),
]

test('while a record does not fit nothing is poured, and the item says what does not and to read again first', async () => {
  const { items, cart, lede } = await todayOf(misread)
  expect(items).toMatchObject([
    {
      condition: 'doubt',
      action: 'measure-first',
      recipe: { add: null, because: ['doubt'] },
      words: { headline: 'Read again before pouring' },
      doubts: [{ kind: 'misread', entry: testId(4), open: true }],
      ahead: { drift: '', crossing: '', check: '' },
    },
  ])
  expect(items[0]!.why).toMatch(
    /^Read 14\.2 °Brix where .* was expected: likely misread or mistyped\. Read it again first/,
  )
  expect(cart).toEqual({ waters: [], concentrates: [] })
  expect(lede).toBe('1 to settle.')
})

test('set aside, the reading is settled and the recipe comes back', async () => {
  const aside = { id: testId(9), at: '2026-03-03T09:40:00Z', kind: 'void', entry: testId(4) }
  const item = await only([...misread, aside])
  expect(item.doubts).toEqual([])
  expect(item.recipe.because).not.toContain('doubt')
  expect(item.concentration!.mean).toBeGreaterThan(7)
})

test('a level seen under the pumps’ suction comes first, even where it is in doubt', async () => {
  const sumps = [{ ...smallShop().sumps[0], minVolume: 60 }]
  const item = await only([...misread.slice(0, 3), testReading(5, { volume: 30, brix: undefined })], { sumps })
  expect(item.condition).toBe('below-suction')
  expect(item.words.cautions.join(' ')).toContain('Pumps that draw air')
})

test('what a refractometer is expected to show is said with its interval', async () => {
  const { expected, concentration } = await only(misread.slice(0, 3))
  expect(expected!.brix.low90).toBeLessThan(5.3)
  expect(expected!.brix.high90).toBeGreaterThan(5.1)
  // Oil and dirt are in it: it is not the concentration over the factor, but near it.
  expect(Math.abs(expected!.brix.mean - concentration!.mean / 1.6)).toBeLessThan(0.5)
  expect(expected!.brix.high90 - expected!.brix.mean).toBeCloseTo(quantile95 * expected!.brix.sd, 1)
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
  const { items } = await todayOf([read(1, 7.5, 150), read(2, 3.5, 150), read(3, 3.1, 150), read(4, 5, 50)], { sumps })
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
  const { cart, lede, items } = await todayOf([testReading(1, { brix: 3.5, volume: 162 }), note])
  const { water, concentrate } = items[0]!.recipe.add!
  expect(cart.waters).toEqual([{ id: 'di', name: 'Deionised water', volume: water }])
  expect(cart.concentrates).toEqual([{ fluid: 'f1', name: 'Semi 1', litres: concentrate }])
  expect(lede).toMatch(
    /^1 sump to fill\. For the cart: [\d.]+ L of deionised water and [\d.]+ L of Semi 1 concentrate\. Last shift’s note: “Mill 1 smelled”$/,
  )
})

test('a withdrawn note is not read out, nor one of last week', async () => {
  const note = (n: number, at: string) => ({
    id: testId(n),
    at,
    kind: 'handover',
    about: { kind: 'shop' },
    text: `note ${n}`,
  })
  const aside = { id: testId(4), at: '2026-03-03T09:00:00Z', kind: 'void', entry: testId(3) }
  const { lede } = await todayOf([
    note(1, '2026-02-20T22:00:00Z'),
    note(2, '2026-03-02T20:00:00Z'),
    note(3, '2026-03-02T22:00:00Z'),
    aside,
  ])
  expect(lede).toContain('note 2')
})

test('a draw-off larger than the volume leaves finite figures', async () => {
  const item = await only([testReading(1), entry(2, 'drawoff', { volume: 9000 })])
  expect(item.action).toBe('measure-first')
  for (const figure of [item.volume!, item.concentration!, item.inAWeek!.concentration, item.expected!.brix]) {
    for (const value of Object.values(figure)) expect(Number.isFinite(value)).toBe(true)
  }
})

// 80 °Brix × 1.6 would be 128 %.
test('a reading of more than pure concentrate is read again before anything is poured', async () => {
  const item = await only([testReading(1, { brix: 80 })])
  expect(item).toMatchObject({ action: 'measure-first', condition: 'doubt' })
})

test('the last reading is found however long ago it was, the last level only where it is young', async () => {
  const sumps = [smallShop().sumps[0], { ...smallShop().sumps[0], id: 's2', name: 'Mill 2' }]
  const { items, calm } = await todayOf(
    [testReading(1, { brix: 3.5, volume: 162, at: '2025-06-01T08:00:00Z' }), testReading(2, { sump: 's2' })],
    { sumps },
  )
  const old = [...items, ...calm].find(({ sump }) => sump === 's1')!
  expect(old.lastStrength).toMatchObject({ text: '3.5 °Brix', at: '2025-06-01T08:00:00.000Z' })
  expect(old.lastLevel).toBeNull()
  expect(old.why).toContain('275 days old')
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
  expect(item.lastStrength?.concentration).toBeCloseTo(10, 10)
})

test('entries that name unknown sumps are counted as quarantined', async () => {
  const { quarantined } = await todayOf([], { quarantine: [testReading(1, { sump: 'elsewhere' })] })
  expect(quarantined).toBe(1)
})
