import { expect, test } from 'vitest'
import { importBookFile } from '../import/import-book.ts'
import { readThings } from '../setup/read-things.ts'
import { thingHistory } from '../setup/things.ts'
import type { Store } from '../store/store.ts'
import { emptyStore, smallShop, testId, testNow, testReading } from '../testing.ts'
import { putEntries } from './put.ts'

async function shopStore(): Promise<Store> {
  const store = await emptyStore()
  await importBookFile(store, JSON.stringify(smallShop()), testNow)
  return store
}
const put = async (store: Store, ...entries: unknown[]) => putEntries(store, entries, testNow, await readThings(store))
const count = async (store: Store) => (await store.head()).seq

test('the same entry again changes nothing, in whatever order its fields stand', async () => {
  const store = await shopStore()
  expect(await put(store, testReading(1))).toMatchObject([{ status: 'added' }])
  const turned = Object.fromEntries(Object.entries(testReading(1)).toReversed())
  expect(await put(store, turned)).toMatchObject([{ status: 'same' }])
  expect(await count(store)).toBe(1)
})

test('half a character, which no disk can hold, is refused by itself', async () => {
  const store = await shopStore()
  expect(await put(store, testReading(1, { note: 'broken \ud83d' }), testReading(2))).toMatchObject([
    { status: 'refused', faults: [{ pointer: '/note', found: 'half a character' }] },
    { status: 'added' },
  ])
  expect(await put(store, { ...testReading(3), kind: 'of-tomorrow', sump: 's\u00001' })).toMatchObject([
    { status: 'refused', faults: [{ pointer: '/sump', expected: 'a name without control characters' }] },
  ])
})

test('another entry under the same id is a conflict', async () => {
  const store = await shopStore()
  await put(store, testReading(1))
  expect(await put(store, testReading(1, { brix: 6 }))).toMatchObject([{ status: 'conflict' }])
  expect(await store.bodies([testId(1)])).toEqual(new Map([[testId(1), expect.stringContaining('"brix":5')]]))
})

test('twice in one batch is once', async () => {
  const store = await shopStore()
  expect(await put(store, testReading(1), testReading(1), testReading(1, { brix: 7 }))).toMatchObject([
    { status: 'added' },
    { status: 'same' },
    { status: 'conflict' },
  ])
  expect(await count(store)).toBe(1)
})

test('an id counts in whatever case it is written', async () => {
  const store = await shopStore()
  const id = 'ABCDEF00-0000-4000-8000-000000000001'
  await put(store, testReading(1, { id }))
  expect(await put(store, testReading(1, { id }))).toMatchObject([{ status: 'same' }])
})

test('one bad entry of a batch does not keep the others out', async () => {
  const store = await shopStore()
  const arrivals = await put(store, testReading(1), testReading(2, { ph: 19 }), testReading(3))
  expect(arrivals.map(({ status }) => status)).toEqual(['added', 'refused', 'added'])
  expect(arrivals[1]!.faults).toEqual([{ pointer: '/ph', found: '19', expected: 'at most 14' }])
  expect(await count(store)).toBe(2)
})

test('an entry for a sump the book does not know is kept, and counts nowhere yet', async () => {
  const store = await shopStore()
  const [arrival] = await put(store, testReading(1, { sump: 'new' }))
  expect(arrival).toMatchObject({ status: 'added', quarantine: 'this book does not know the sump "new" yet' })
})

test('a kind of entry that only a newer version knows is kept', async () => {
  const store = await shopStore()
  const [arrival] = await put(store, { ...testReading(1), kind: 'spectrum' })
  expect(arrival).toMatchObject({ status: 'added', quarantine: expect.stringContaining('spectrum') })
})

test('a time in the future is asked about once, and taken when it was confirmed', async () => {
  const store = await shopStore()
  const late = testReading(1, { at: '2026-03-03T10:05:01Z' })
  expect(await put(store, late)).toMatchObject([{ status: 'refused', confirmable: true, faults: [{ pointer: '/at' }] }])
  expect(await put(store, testReading(2, { at: '2026-03-03T10:05:00Z' }))).toMatchObject([{ status: 'added' }])
  expect(await put(store, { ...late, confirmed: ['/at'] })).toMatchObject([{ status: 'added' }])
})

test('a level above the brim is refused, 5 % above it is not', async () => {
  const store = await shopStore()
  expect(await put(store, testReading(1, { volume: 252 }))).toMatchObject([{ status: 'added' }])
  expect(await put(store, testReading(2, { volume: 252.1 }))).toMatchObject([
    {
      status: 'refused',
      faults: [{ pointer: '/volume', found: '252.1 L', expected: 'at most the brim of Mill 1, 240 L' }],
    },
  ])
})

test('what was taken once is not refused when it is sent again, whatever its sump has become', async () => {
  const store = await shopStore()
  const high = testReading(1, { volume: 235 })
  expect(await put(store, high)).toMatchObject([{ status: 'added' }])
  expect(await put(store, setup(2, { capacity: 205 }))).toMatchObject([{ status: 'added' }])
  const later = { ...high, at: '2026-03-03T09:30:00Z' }
  expect(await put(store, { ...later, id: testId(3) })).toMatchObject([{ status: 'refused' }])
  await put(store, { ...setup(4, { capacity: 205 }), at: '2026-03-01T00:00:00Z' })
  expect(await put(store, high)).toMatchObject([{ status: 'same', faults: [] }])
  expect(await put(store, { ...high, brix: 6 })).toMatchObject([{ status: 'refused' }])
})

test('unknown fields are kept and warned of', async () => {
  const store = await shopStore()
  const [arrival] = await put(store, testReading(1, { colour: 'milky' }))
  expect(arrival!.warnings).toEqual(['/colour is not a field of this version; it is kept.'])
  expect([...(await store.bodies([testId(1)])).values()][0]).toContain('"colour":"milky"')
})

const setup = (n: number, changes: Record<string, unknown>, about = { kind: 'sump', id: 's1' }) => ({
  id: testId(n),
  at: '2026-03-03T09:00:00Z',
  kind: 'setup',
  about,
  changes,
})

test('a set-up that its thing cannot have is refused by its field', async () => {
  const store = await shopStore()
  expect(await put(store, setup(1, { fillVolume: -5 }))).toMatchObject([
    { status: 'refused', faults: [{ pointer: '/changes/fillVolume', found: '-5', expected: 'above 0' }] },
  ])
  expect(await put(store, setup(2, { fillVolume: 300 }))).toMatchObject([
    {
      status: 'refused',
      faults: [{ pointer: '/changes/fillVolume', expected: 'a full mark not above the brim (`capacity`)' }],
    },
  ])
  expect(await put(store, setup(3, { fillVolume: 210 }))).toMatchObject([{ status: 'added' }])
  expect((await readThings(store)).at().sump.get('s1')?.fillVolume).toBe(210)
})

test('a thing may be told in parts', async () => {
  const store = await shopStore()
  const about = { kind: 'sump', id: 's9' }
  expect(await put(store, setup(1, { name: 'Lathe 9' }, about))).toMatchObject([{ status: 'added' }])
  expect((await readThings(store)).at().sump.has('s9')).toBe(false)
  await put(store, setup(2, { fluid: 'f1' }, about))
  expect((await readThings(store)).at().sump.get('s9')).toEqual({ id: 's9', name: 'Lathe 9', fluid: 'f1' })
})

test('nonsense is refused by name', async () => {
  const history = thingHistory([], [])
  const store = await emptyStore()
  for (const sent of [null, 7, 'reading', [], {}, { kind: 'reading' }]) {
    const [arrival] = await putEntries(store, [sent], testNow, history)
    expect(arrival).toMatchObject({ status: 'refused' })
    expect(arrival!.faults.length).toBeGreaterThan(0)
  }
  expect(await count(store)).toBe(0)
})

test('what has no canonical form is refused by itself, under an id that is taken as well, and not with everybody else’s entries', async () => {
  const store = await shopStore()
  await put(store, testReading(1))
  const beyond = JSON.parse(
    JSON.stringify(testReading(3, { later: 7 })).replace('"later":7', '"later":1e400'),
  ) as unknown
  const deep = { ...testReading(4), later: JSON.parse(`${'['.repeat(50_000)}${']'.repeat(50_000)}`) as unknown }
  const arrivals = await put(store, testReading(1, { note: '\ud800' }), beyond, deep, testReading(5))
  expect(arrivals.map(({ status, faults }) => [status, faults[0]?.pointer.slice(0, 6)])).toEqual([
    ['refused', '/note'],
    ['refused', '/later'],
    ['refused', '/later'],
    ['added', undefined],
  ])
})
