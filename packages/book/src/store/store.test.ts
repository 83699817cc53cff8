import { describe, expect, test } from 'vitest'
import { openBook } from '../book.ts'
import { sourceOf } from '../import/sheet/sheet-source.ts'
import { arriving } from '../journal/arriving.ts'
import { sha256 } from '../journal/canonical.ts'
import { smallShop, testId, testNow, testReading } from '../testing.ts'
import { openStore } from './open.ts'
import type { Store, StoredEntry } from './store.ts'
import { opened, places } from './testing.ts'

const received = '2026-03-03T10:00:00.000Z'
const append = (store: Store, ...entries: { id: string; at: string; kind: string }[]) =>
  store.write((journal) => journal.append(entries.map(arriving), received))

describe.each(places)('a store, %s', (_, place) => {
  const emptyStore = async () => opened(await place())

  test('entries are numbered from 1 in order of arrival, without gaps', async () => {
    const store = await emptyStore()
    await append(store, testReading(3), testReading(1))
    await append(store, testReading(2))
    const entries = await store.entries({ order: 'arrival' })
    expect(entries.map(({ seq, id }) => [seq, id])).toEqual([
      [1, testId(3)],
      [2, testId(1)],
      [3, testId(2)],
    ])
  })

  test('the chain is SHA-256 of the hash before, the hash of the body, and the place', async () => {
    const store = await emptyStore()
    await append(store, testReading(1), testReading(2))
    const [first, second] = await store.entries({ order: 'arrival' })
    const one = sha256(`${'0'.repeat(64)}${sha256(first!.body)}1`)
    expect(first!.hash).toBe(one)
    expect(second!.hash).toBe(sha256(`${one}${sha256(second!.body)}2`))
    expect(await store.head()).toEqual({ seq: 2, hash: second!.hash, setupSeq: 0 })
  })

  test('the head says where the last entry stands that may have changed a thing', async () => {
    const store = await emptyStore()
    const at = '2026-03-03T09:30:00Z'
    const setup = { id: testId(2), at, kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: {} }
    await append(store, testReading(1), setup, testReading(3))
    expect(await store.head()).toMatchObject({ seq: 3, setupSeq: 2 })
    await append(store, testReading(4))
    expect(await store.head()).toMatchObject({ seq: 4, setupSeq: 2 })
    await append(store, { id: testId(5), at, kind: 'void', entry: testId(2) } as never)
    expect(await store.head()).toMatchObject({ seq: 5, setupSeq: 5 })
  })

  test('entries are counted by kind after one place and up to another; the book knows how much room it takes', async () => {
    const store = await emptyStore()
    const at = '2026-03-03T09:30:00Z'
    const empty = await store.bytes()
    expect(empty).toBeGreaterThan(0)
    await append(store, ...[1, 2, 3].map((n) => testReading(n, { note: 'x'.repeat(20_000) })))
    await append(store, { id: testId(4), at, kind: 'skip', sump: 's1' } as never)
    expect(await store.countByKind(0, 4)).toEqual(
      new Map([
        ['reading', 3],
        ['skip', 1],
      ]),
    )
    expect(await store.countByKind(1, 3)).toEqual(new Map([['reading', 2]]))
    expect(await store.countByKind(4, 9)).toEqual(new Map())
    expect(await store.bytes()).toBeGreaterThan(empty)
  })

  test('in order of time: by instant, at one instant by rank, then by id', async () => {
    const store = await emptyStore()
    const at = '2026-03-03T09:30:00+01:00'
    await append(
      store,
      { id: testId(1), at, kind: 'addition', sump: 's1' } as never,
      testReading(2, { at: '2026-03-03T08:30:00Z' }),
      { id: testId(3), at, kind: 'charge', sump: 's1' } as never,
      testReading(4, { at: '2026-03-03T08:29:59Z' }),
      testReading(5),
    )
    const ids = (await store.entries({ order: 'time' })).map(({ id }) => id)
    expect(ids).toEqual([4, 3, 2, 5, 1].map(testId))
    const backwards = (await store.entries({ order: 'time-backwards' })).map(({ id }) => id)
    expect(backwards).toEqual(ids.toReversed())
  })

  test('a page begins after the entry before it', async () => {
    const store = await emptyStore()
    await append(store, ...[1, 2, 3, 4, 5].map((n) => testReading(n)))
    const [, second] = await store.entries({ order: 'time', limit: 2 })
    const next = await store.entries({ order: 'time', limit: 2, after: second! })
    expect(next.map(({ id }) => id)).toEqual([3, 4].map(testId))
    const after = await store.entries({ order: 'time', after: { at: second!.at, rank: second!.rank, id: second!.id } })
    expect(after.map(({ id }) => id)).toEqual([3, 4, 5].map(testId))
  })

  test('a transaction that fails leaves nothing behind', async () => {
    const store = await emptyStore()
    const failing = store.write(async (journal) => {
      await journal.append([arriving(testReading(1))], received)
      throw new Error('lost heart')
    })
    await expect(failing).rejects.toThrow('lost heart')
    expect(await store.head()).toEqual({ seq: 0, hash: '0'.repeat(64), setupSeq: 0 })
    expect(await store.entries({ order: 'arrival' })).toEqual([])
  })

  test('an id cannot be used twice', async () => {
    const store = await emptyStore()
    await append(store, testReading(1))
    await expect(append(store, testReading(1, { brix: 6 }))).rejects.toThrow(/unique/i)
    expect((await store.head()).seq).toBe(1)
  })

  test('the order of ids and names is that of their letters’ codes, capitals first', async () => {
    const store = await emptyStore()
    const sumps = ['b', 'B', 'a', 'Ä', 'A', '10', '9', '_', 'é', 'mill 1', 'mill-1', 'Z']
    await store.write((journal) =>
      journal.addThings(sumps.map((id) => ({ kind: 'sump', id, position: 0, body: '{}' }))),
    )
    expect((await store.things()).map(({ id }) => id)).toEqual(sumps.toSorted())
  })

  test('texts and numbers come back as they went in', async () => {
    const store = await emptyStore()
    const note = 'quote \' " back\\slash \u0000 \u2028 € 😀 %s $1 ? :a'
    const reading = testReading(1, { note, brix: 4.1, volume: 1e-7, sump: 'Säge "7"' })
    await append(store, reading as never)
    const [entry] = await store.entries({ order: 'time', sump: 'Säge "7"' })
    expect(JSON.parse(entry!.body)).toEqual(reading)
    await store.write((journal) => journal.setMeta('key', note.replace('\u0000', '')))
    expect(await store.meta('key')).toBe(note.replace('\u0000', ''))
  })

  test('entries are found by sump, by kind and by time', async () => {
    const store = await emptyStore()
    const at = (hour: number) => `2026-03-03T0${hour}:00:00.000Z`
    await append(
      store,
      testReading(1, { at: at(1) }),
      testReading(2, { at: at(2), sump: 's2' }),
      { id: testId(3), at: at(3), kind: 'charge', sump: 's1' } as never,
      testReading(4, { at: at(4) }),
    )
    const ids = async (query: Parameters<Store['entries']>[0]) => (await store.entries(query)).map(({ id }) => id)
    expect(await ids({ order: 'time', sump: 's1' })).toEqual([1, 3, 4].map(testId))
    expect(await ids({ order: 'time', kinds: ['charge'] })).toEqual([testId(3)])
    expect(await ids({ order: 'time', kinds: ['charge', 'reading'], since: at(2), until: at(3) })).toEqual(
      [2, 3].map(testId),
    )
    expect(await ids({ order: 'arrival', after: { seq: 2 }, limit: 1 })).toEqual([testId(3)])
    const [first, , third] = await store.entries({ order: 'time' })
    const after = ({ at: instant, rank, id }: StoredEntry) => ({ at: instant, rank, id })
    expect(await ids({ order: 'time', since: at(1), until: at(3), after: after(first!) })).toEqual([2, 3].map(testId))
    expect(await ids({ order: 'time', since: at(3), after: after(first!) })).toEqual([3, 4].map(testId))
    expect(await ids({ order: 'time-backwards', since: at(2), until: at(4), after: after(third!) })).toEqual([
      testId(2),
    ])
    expect(await ids({ order: 'time-backwards', until: at(2), after: after(third!) })).toEqual([2, 1].map(testId))
    expect(await store.countBySump(new Set())).toEqual(
      new Map([
        ['s1', 3],
        ['s2', 1],
      ]),
    )
    expect(await store.countBySump(new Set(['s1', 's3']))).toEqual(new Map([['s2', 1]]))
    expect(await store.countBySump(new Set(['s1', 's2']))).toEqual(new Map())
    expect([...(await store.bodies([4, 1, 9].map(testId))).keys()].sort()).toEqual([1, 4].map(testId))
  })

  test('a write may append more than once, and things and notes beside', async () => {
    const store = await emptyStore()
    await store.write(async (journal) => {
      await journal.append([arriving(testReading(1))], received)
      await journal.addThings([{ kind: 'sump', id: 's1', position: 0, body: '{}' }])
      await journal.setMeta('a', '1')
      await journal.append([arriving(testReading(2))], received)
      await journal.setMeta('a', '2')
    })
    expect(await store.head()).toMatchObject({ seq: 2 })
    expect(await store.allMeta()).toEqual([{ key: 'a', value: '2' }])
    expect(await store.countThings()).toBe(1)
  })

  test('many writers at once make one chain without gaps', async () => {
    const at = await place()
    const stores = at.kind === 'memory' ? [await opened(at)] : [await opened(at), await opened(at), await opened(at)]
    // Two stores on one file in one process wait for each other standing still: a few are enough.
    const entries = at.kind === 'file' ? 9 : 60
    await Promise.all(Array.from({ length: entries }, (_, n) => append(stores[n % stores.length]!, testReading(n))))
    const rows = await stores[0]!.rows(0, 100)
    expect(rows.map(({ seq }) => seq)).toEqual(Array.from({ length: entries }, (_, n) => n + 1))
    let hash = '0'.repeat(64)
    for (const row of rows) {
      hash = sha256(`${hash}${sha256(row.body)}${row.seq}`)
      expect(row.hash).toBe(hash)
    }
    expect((await stores[0]!.head()).hash).toBe(hash)
  })
})

describe.each(places.filter(([name]) => name !== 'in memory'))('a store that outlives its program, %s', (_, place) => {
  test('a snapshot reads one moment, whoever writes meanwhile', async () => {
    const store = await opened(await place())
    await append(store, testReading(1))
    const seen = await store.snapshot(async (journal) => {
      const before = await journal.head()
      await append(store, testReading(2))
      return { before, after: await journal.head(), rows: (await journal.rows(0, 10)).length, now: await store.head() }
    })
    expect(seen).toMatchObject({ before: { seq: 1 }, after: { seq: 1 }, rows: 1, now: { seq: 2 } })
  })

  test('what was written is there when it is opened again', async () => {
    const at = await place()
    const before = await openStore(at)
    await append(before, testReading(1))
    await before.close()
    const store = await opened(at)
    expect((await store.entries({ order: 'arrival' })).map(({ id }) => id)).toEqual([testId(1)])
  })

  test('what one program writes, the next program reads at once', async () => {
    const at = await place()
    const [one, other] = [openBook(await opened(at), () => testNow), openBook(await opened(at), () => testNow)]
    const mark = async () => (await other.present()).sump.get('s1')?.fillVolume
    await one.importFile(sourceOf('shop.json', Buffer.from(JSON.stringify(smallShop()))))
    expect(await mark()).toBe(200)
    const setup = { at: '2026-03-03T09:00:00Z', kind: 'setup', about: { kind: 'sump', id: 's1' } }
    await one.put({ ...setup, id: testId(1), changes: { fillVolume: 210 } })
    expect(await mark()).toBe(210)
    await one.put({
      id: testId(2),
      at: '2026-03-03T09:30:00Z',
      kind: 'void',
      entry: testId(1),
      about: { kind: 'shop' },
    })
    expect(await mark()).toBe(200)
    expect((await other.today()).items).toMatchObject([{ sump: 's1' }])
    await one.put(testReading(3))
    expect((await other.today()).items).toEqual((await one.today()).items)
  })
})
