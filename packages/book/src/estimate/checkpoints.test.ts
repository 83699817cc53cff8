import { expect, test } from 'vitest'
import { type Book, openBook } from '../book.ts'
import { sha256 } from '../journal/canonical.ts'
import { thingCache } from '../setup/thing-cache.ts'
import type { Store } from '../store/store.ts'
import { emptyStore, smallShop, testId } from '../testing.ts'
import { checkpoints } from './checkpoints.ts'
import type { Estimator } from './estimator.ts'

/** Knows only which events it was given under what it had learnt when, in a way that tells any two courses apart. */
interface Trace {
  hash: string
  learnt: string
}
const tracer: Estimator<Trace, string> = {
  open: (calendar, learnt = 'nothing') => ({ hash: sha256(JSON.stringify([calendar, learnt])), learnt }),
  takeDay: (trace, day, events) => {
    const plain = events.map((event) => ('scales' in event ? { ...event, scales: [...event.scales] } : event))
    trace.hash = sha256(`${trace.hash} ${JSON.stringify([day, plain])}`)
  },
  copy: (trace) => ({ ...trace }),
  pack: (trace) => trace,
  unpack: (packed) => packed as Trace,
  learn: ({ hash }) => hash.slice(0, 8),
  isAdoptionDay: (first, day) => [5, 10, 20, 40, 80, 160].includes(day - first),
}
const keeping = (store: Store, print = 'one', estimator = tracer) =>
  checkpoints({ store, things: thingCache(store), estimator, print: () => print })
/** What a keeping says of an instant. */
const traceAt = async (of: ReturnType<typeof keeping>, at: string) => {
  const { standing } = await of.standing(Date.parse(at))
  return [standing.shop, [...standing.memory.sumps], [...standing.memory.meters]]
}

const day = 86_400_000
const start = Date.parse('2026-01-05T06:00:00Z')
const instant = (days: number) => new Date(start + Math.round(days * 1440) * 60_000).toISOString()

/** Chance of our own, the same at every run: a linear congruential generator (Numerical Recipes' constants). */
function chanceFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

const sumps = ['s1', 's2', 's3'].map((id) => ({ id, name: id, fluid: 'f1', fillVolume: 200 }))

async function shop(): Promise<{ store: Store; book: Book }> {
  const store = await emptyStore()
  const book = openBook(store, () => new Date(start + 400 * day))
  const meters = [{ id: 'm1', name: 'Hose', litresPerCount: 1 }]
  const file = JSON.stringify(smallShop({ sumps, meters }))
  await book.importFile({
    name: 'shop.json',
    async *open() {
      yield new TextEncoder().encode(file)
    },
  })
  return { store, book }
}

/** Any entry at all, at any time of the last `span` days before `until`. */
function anyEntry(n: number, chance: () => number, until: number, span: number): Record<string, unknown> {
  const at = instant(until - chance() * span)
  const of = { id: testId(n), at, sump: `s${1 + Math.floor(chance() * 4)}` }
  const kind = Math.floor(chance() * 12)
  if (kind < 4) return { ...of, kind: 'reading', brix: 3 + Math.floor(chance() * 30) / 10, volume: 150 }
  if (kind < 6) return { ...of, kind: 'addition', volume: Math.floor(chance() * 50), strength: 5 }
  if (kind === 6) return { ...of, kind: 'addition', meter: { id: 'm1', count: Math.floor(chance() * 1000) } }
  if (kind === 7) return { ...of, kind: 'transfer', volume: 10, to: `s${1 + Math.floor(chance() * 4)}` }
  if (kind === 8) return { ...of, kind: 'charge', volume: 180, strength: 7 }
  const { sump, ...about } = of
  if (kind === 9) return { ...about, kind: 'void', entry: testId(Math.floor(chance() * n)) }
  if (kind === 10) {
    const changes = { fillVolume: 180 + Math.floor(chance() * 40) }
    return { ...about, kind: 'setup', about: { kind: 'sump', id: sump }, changes, was: { fillVolume: 200 } }
  }
  return { ...about, kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: 200 + Math.floor(chance() * 99) }
}

test.each([1, 2, 3, 4, 5, 6])(
  'whatever comes late, is withdrawn or set up otherwise, the answer is that of a full replay (chance %i)',
  async (seed) => {
    const { store, book } = await shop()
    const chance = chanceFrom(seed)
    let kept = keeping(store)
    let n = 0
    for (let today = 1; today < 70; today += 1 + Math.floor(chance() * 3)) {
      const late = chance() < 0.3 ? 60 : 1
      const entries = Array.from({ length: 1 + Math.floor(chance() * 4) }, () => anyEntry(n++, chance, today, late))
      for (const arrival of await book.putMany(entries)) expect(['added', 'refused']).toContain(arrival.status)
      const at = chance() < 0.2 ? instant(today * chance()) : instant(today)
      expect(await traceAt(kept, at)).toEqual(await traceAt(keeping(store, 'afresh'), at))
      if (chance() < 0.3) await kept.settle(Date.parse(at))
      if (chance() < 0.3) kept = keeping(store)
    }
    expect(n).toBeGreaterThan(50)
  },
)

test('the same entries give the same answer in whatever order they arrived', async () => {
  const chance = chanceFrom(7)
  const entries = Array.from({ length: 80 }, (_, n) => anyEntry(n, chance, 45, 45))
  const [one, other] = [await shop(), await shop()]
  await one.book.putMany(entries)
  for (const entry of entries.toReversed()) await other.book.putMany([entry])
  const at = instant(46)
  expect(await traceAt(keeping(one.store), at)).toEqual(await traceAt(keeping(other.store), at))
})

test('entries after the time asked for are not used', async () => {
  const { store, book } = await shop()
  const reading = (n: number, days: number) => ({
    id: testId(n),
    at: instant(days),
    sump: 's1',
    kind: 'reading',
    brix: 5,
  })
  await book.putMany([reading(1, 1), reading(2, 2)])
  const before = await traceAt(keeping(store), instant(2.5))
  await book.putMany([reading(3, 2.6), reading(4, 30)])
  expect(await traceAt(keeping(store), instant(2.5))).toEqual(before)
  expect(await traceAt(keeping(store), instant(2.6))).not.toEqual(before)
})

test('what is learnt is adopted on its day and not before, from the days before it alone', async () => {
  const { store, book } = await shop()
  const reading = (n: number, days: number) => ({
    id: testId(n),
    at: instant(days),
    sump: 's1',
    kind: 'reading',
    brix: 5,
  })
  await book.putMany([reading(1, 0), reading(2, 3)])
  const learntAt = async (days: number) =>
    (await keeping(store).standing(Date.parse(instant(days)))).standing.shop.learnt
  expect(await learntAt(4.7)).toBe('nothing')
  const adopted = await learntAt(5)
  expect(adopted).not.toBe('nothing')
  await book.putMany([reading(3, 5)])
  expect(await learntAt(5.1)).toBe(adopted)
  await book.putMany([reading(4, 4)])
  expect(await learntAt(5.1)).not.toBe(adopted)
})

test('folds are kept the sparser the older they are, and one after the last adoption', async () => {
  const { store, book } = await shop()
  const entries = Array.from({ length: 60 }, (_, n) => ({
    id: testId(n),
    at: instant(n),
    sump: 's1',
    kind: 'reading',
    brix: 5,
  }))
  await book.putMany(entries)
  const kept = keeping(store)
  await kept.standing(Date.parse(instant(60)))
  const ages = kept.kept.map((ready) => kept.kept.at(-1)! - ready)
  expect(ages).toEqual([32, 20, 16, 8, 4, 2, 0])
})

test('an entry of today is answered from what is ready for today', async () => {
  const { store, book } = await shop()
  await book.putMany(
    Array.from({ length: 60 }, (_, n) => ({ id: testId(n), at: instant(n), sump: 's1', kind: 'reading', brix: 5 })),
  )
  let days = 0
  const counting = keeping(store, 'one', {
    ...tracer,
    takeDay: (...given) => {
      days += 1
      tracer.takeDay(...given)
    },
  })
  await counting.standing(Date.parse(instant(60)))
  days = 0
  await book.putMany([{ id: testId(99), at: instant(59.9), sump: 's1', kind: 'reading', brix: 5 }])
  await counting.standing(Date.parse(instant(60)))
  expect(days).toBeLessThanOrEqual(3)
})

/** Readings of sixty days, one a day. */
const sixtyReadings = Array.from({ length: 60 }, (_, n) => ({
  id: testId(n),
  at: instant(n),
  sump: 's1',
  kind: 'reading',
  brix: 5,
}))

test('what was settled is gone on from by the next program, and only by the same engine', async () => {
  const { store, book } = await shop()
  await book.putMany(sixtyReadings)
  const at = Date.parse(instant(60))
  await keeping(store).settle(at)
  let days = 0
  const counter = {
    ...tracer,
    takeDay: (...given: Parameters<typeof tracer.takeDay>) => {
      days += 1
      tracer.takeDay(...given)
    },
  }
  const next = keeping(store, 'one', counter)
  const answer = await next.standing(at)
  expect(days).toBeLessThanOrEqual(1)
  expect(next.kept.length).toBeGreaterThan(2)
  const other = keeping(store, 'another', counter)
  expect((await other.standing(at)).standing.shop).toEqual(answer.standing.shop)
  expect(days).toBeGreaterThan(60)
})

test('a question writes nothing', async () => {
  const { store, book } = await shop()
  await book.putMany(sixtyReadings)
  await keeping(store).standing(Date.parse(instant(60)))
  expect(await store.projections('estimate')).toEqual([])
  await keeping(store).settle(Date.parse(instant(60)))
  const settled = await store.projections('estimate')
  expect(settled.length).toBeGreaterThan(0)
  await book.putMany([{ id: testId(100), at: instant(3), sump: 's1', kind: 'reading', brix: 4 }])
  await keeping(store).standing(Date.parse(instant(60)))
  expect(await store.projections('estimate')).toEqual(settled)
})

test('the book settles with its own engine, and answers the same from what it settled, to the last bit', async () => {
  const { store, book } = await shop()
  await book.putMany(sixtyReadings)
  const at = instant(60)
  const before = JSON.stringify(await book.estimate({ at }))
  await openBook(store, () => new Date(at)).settle()
  const opened = openBook(store, () => new Date(at))
  expect(JSON.stringify(await opened.estimate({ at }))).toBe(before)
  await opened.putMany([{ id: testId(101), at: instant(59.5), sump: 's2', kind: 'charge', volume: 150, strength: 6 }])
  await opened.putMany([{ id: testId(102), at: instant(41), sump: 's1', kind: 'addition', volume: 30, strength: 6 }])
  const late = JSON.stringify(await opened.estimate({ at }))
  expect(late).not.toBe(before)
  await store.write((journal) => journal.keepProjections('estimate', []))
  expect(JSON.stringify(await openBook(store, () => new Date(at)).estimate({ at }))).toBe(late)
})
