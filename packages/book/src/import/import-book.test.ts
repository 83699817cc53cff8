import { text } from 'node:stream/consumers'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exportBook } from '../export/export-book.ts'
import type { Store } from '../store/store.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { importBookFile } from './import-book.ts'

const bring = (store: Store, file: unknown) => importBookFile(store, JSON.stringify(file), testNow)
const exported = async (store: Store) => JSON.parse(await text(exportBook(store))) as Record<string, unknown>
const entries = [
  testReading(1, { colour: 'milky', typed: { brix: '5,0' }, hardness: { low: 250, high: 425 } }),
  {
    id: testId(2),
    at: '2026-03-03T10:00:00+01:00',
    kind: 'addition',
    sump: 's1',
    volume: 20,
    strength: 5,
    water: 'di',
  },
  { id: testId(3), at: '2026-03-03T11:00:00Z', kind: 'void', entry: testId(1), reason: 'wrong machine' },
  {
    id: testId(4),
    at: '2026-02-01T11:00:00Z',
    kind: 'handover',
    about: { kind: 'shop', id: 'shop' },
    text: 'all quiet',
  },
]
const whole = smallShop({ entries, meters: [], wishes: { more: 'cake' } })

test('a book that was imported is exported the same, unknown fields and sections included', async () => {
  const store = await emptyStore()
  await bring(store, whole)
  expect(await exported(store)).toEqual(whole)
})

test('an export imports to the same export, byte for byte', async () => {
  const [first, second] = [await emptyStore(), await emptyStore()]
  await bring(first, whole)
  const once = await text(exportBook(first))
  await importBookFile(second, once, testNow)
  expect(await text(exportBook(second))).toBe(once)
})

test('importing twice changes nothing', async () => {
  const store = await emptyStore()
  expect(await bring(store, whole)).toMatchObject({ counts: { new: 4, same: 0, things: 5 } })
  expect(await bring(store, whole)).toMatchObject({ counts: { new: 0, same: 4, things: 0 } })
  expect((await store.head()).seq).toBe(4)
})

test('a file with more entries adds just those', async () => {
  const store = await emptyStore()
  await bring(store, whole)
  const more = { ...whole, entries: [...entries, testReading(5)] }
  expect(await bring(store, more)).toMatchObject({ counts: { new: 1, same: 4 } })
})

test('unknown fields are warned of by pointer', async () => {
  const store = await emptyStore()
  expect((await bring(store, whole)).warnings).toEqual([
    '/entries/0/colour is not a field of sumpbook-book/1; it is kept.',
    '/wishes is not a field of sumpbook-book/1; it is kept.',
  ])
})

const refused = async (file: unknown) => {
  const store = await emptyStore()
  const error = await bring(store, file).then(
    () => null,
    (refusal: unknown) => refusal,
  )
  expect(await store.head()).toMatchObject({ seq: 0 })
  expect(await store.things()).toEqual([])
  return error as { code: string; faults: { pointer: string; found: string; expected: string }[] }
}

test('every fault of a file is named, and nothing of it is written', async () => {
  const { code, faults } = await refused(
    smallShop({
      sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: -200 }],
      entries: [
        testReading(1, { brix: 96 }),
        testReading(2, { kind: 'reeding' }),
        testReading(3, { at: 'yesterday', ph: 19 }),
      ],
    }),
  )
  expect(code).toBe('refused-input')
  expect(faults.map(({ pointer }) => pointer)).toEqual([
    '/sumps/0/fillVolume',
    '/entries/0/brix',
    '/entries/1/kind',
    '/entries/2/at',
    '/entries/2/ph',
  ])
})

test.each([
  ['an entry of an unknown sump', { entries: [testReading(1, { sump: 's9' })] }, '/entries/0/sump'],
  [
    'a charge with an unknown fluid',
    { entries: [{ ...testReading(1), kind: 'charge', fluid: 'f9' }] },
    '/entries/0/fluid',
  ],
  ['a sump with an unknown fluid', { sumps: [{ id: 's1', name: 'Mill', fluid: 'f9' }] }, '/sumps/0/fluid'],
  [
    'two sumps of one id',
    {
      sumps: [
        { id: 's1', name: 'A', fluid: 'f1' },
        { id: 's1', name: 'B', fluid: 'f1' },
      ],
    },
    '/sumps/1/id',
  ],
  ['two entries of one id', { entries: [testReading(1), testReading(1, { brix: 6 })] }, '/entries/1/id'],
  ['a level above the brim', { entries: [testReading(1, { volume: 253 })] }, '/entries/0/volume'],
  [
    'a band upside down',
    { fluids: [{ id: 'f1', name: 'F', limits: { concentration: { low: 9, high: 5 } } }] },
    '/fluids/0/limits/concentration',
  ],
  ['another format', { format: 'sumpbook-book/2' }, '/format'],
])('%s is a fault at its place', async (_, more, pointer) => {
  expect((await refused(smallShop(more))).faults.map((fault) => fault.pointer)).toContain(pointer)
})

test('a truncated file is refused', async () => {
  const store = await emptyStore()
  const text = JSON.stringify(whole)
  await expect(importBookFile(store, text.slice(0, text.length / 2), testNow)).rejects.toMatchObject({
    code: 'refused-input',
    faults: [{ pointer: '', expected: 'a whole JSON document' }],
  })
})

test('an entry or a thing that the book has otherwise refuses the file', async () => {
  const store = await emptyStore()
  await bring(store, whole)
  const other = smallShop({
    sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 210, capacity: 240 }],
    entries: [testReading(1)],
  })
  await expect(bring(store, other)).rejects.toMatchObject({
    faults: [{ pointer: '/entries/0' }, { pointer: '/sumps/0/fillVolume', found: '210' }],
  })
})

test('contradictions of the shop floor are no faults of the file', async () => {
  const store = await emptyStore()
  await bring(
    store,
    smallShop({
      entries: [
        { id: testId(1), at: '2031-01-01T00:00:00Z', kind: 'drawoff', sump: 's1', volume: 9000 },
        { id: testId(2), at: '2031-01-01T00:00:00Z', kind: 'charge', sump: 's1', volume: 500 },
        { id: testId(3), at: '2031-01-01T00:00:00Z', kind: 'charge', sump: 's1', volume: 100 },
      ],
    }),
  )
  expect((await store.head()).seq).toBe(3)
})

test('entries that count nowhere yet are exported apart, and taken back', async () => {
  const [first, second] = [await emptyStore(), await emptyStore()]
  const quarantine = [testReading(7, { sump: 'elsewhere' }), { ...testReading(8), kind: 'spectrum' }]
  await bring(first, { ...whole, quarantine })
  const file = await exported(first)
  expect(file.quarantine).toEqual(quarantine)
  await bring(second, file)
  expect(await exported(second)).toEqual(file)
})

test('whatever JSON is given, it is taken or refused, never a crash', async () => {
  const store = await emptyStore()
  await fc.assert(
    fc.asyncProperty(fc.json(), async (text) => {
      await expect(importBookFile(store, text, testNow)).rejects.toMatchObject({ code: 'refused-input' })
    }),
    { numRuns: 200 },
  )
})
