import { expect, test } from 'vitest'
import type { Entry, Problem } from '../api/types.ts'
import { batchSize, openOutbox, type Said, type Sent } from './outbox.ts'
import { type MemoryDisk, memoryDisk } from './testing.ts'
import { isOnDevice } from './waiting.ts'

const idOf = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const entry = (n: number): Entry => ({
  id: idOf(n),
  at: '2026-11-25T07:00:00Z',
  kind: 'reading',
  sump: 's1',
  brix: 3,
})
const item = (n: number) => ({ entry: entry(n), label: `reading ${n}` })
const items = (count: number) => Array.from({ length: count }, (_, n) => item(n))

const problem: Problem = {
  title: 'refused',
  errors: [{ pointer: '/at', found: 'tomorrow', expected: 'not after now' }],
  confirmable: true,
}
const taken = (id: string): Said => ({ id, outcome: 'taken', heldFor: null })
const takesAll = async (entries: readonly Entry[]): Promise<Sent> => ({
  outcome: 'answered',
  said: entries.map(({ id }) => taken(id)),
})
const silent = async (): Promise<Sent> => ({ outcome: 'no-answer' })

const clock = { now: 0 }
const openOn = (keep: MemoryDisk, send: (entries: readonly Entry[]) => Promise<Sent>) =>
  openOutbox({ keep, send, alone: (work) => work(), now: () => clock.now, tell: () => {} })
const labels = (outbox: ReturnType<typeof openOn>) =>
  outbox
    .view()
    .all.filter(isOnDevice)
    .map(({ label }) => label)

test('an entry is on the disk when it is called kept, and stays in sight once it is taken', async () => {
  const disk = memoryDisk()
  const outbox = openOn(disk, takesAll)
  expect(await outbox.add([item(0)])).toBe('device')
  expect([...disk.kept.keys()]).toEqual([idOf(0)])
  expect(await outbox.flush()).toEqual({ taken: [idOf(0)], isLeft: false })
  expect(labels(outbox)).toEqual([])
  expect(outbox.view().all.map(({ taken }) => taken?.heldFor)).toEqual([null])
  expect((await outbox.flush()).taken).toEqual([])
})

test('no answer: everything stays, in order, and a page opened later finds and sends it', async () => {
  const disk = memoryDisk()
  const first = openOn(disk, silent)
  await first.add([item(1), item(0)])
  expect(await first.flush()).toEqual({ taken: [], isLeft: true })
  const seen: string[] = []
  const later = openOn(disk, (entries) => {
    seen.push(...entries.map(({ id }) => id))
    return takesAll(entries)
  })
  await later.look()
  expect(labels(later)).toEqual(['reading 0', 'reading 1'])
  await later.flush()
  expect(seen).toEqual([idOf(0), idOf(1)])
})

test('many go in batches, oldest first', async () => {
  const sizes: number[] = []
  const outbox = openOn(memoryDisk(), (entries) => {
    sizes.push(entries.length)
    return takesAll(entries)
  })
  await outbox.add(items(2 * batchSize + 1))
  expect((await outbox.flush()).taken).toEqual(items(2 * batchSize + 1).map(({ entry }) => entry.id))
  expect(sizes).toEqual([batchSize, batchSize, 1])
})

test('a refused entry stays with its reason and does not hold up the others', async () => {
  const outbox = openOn(memoryDisk(), async (entries) => ({
    outcome: 'answered',
    said: entries.map(({ id }) => (id === idOf(0) ? { id, outcome: 'refused', problem } : taken(id))),
  }))
  await outbox.add([item(0), item(1)])
  expect(await outbox.flush()).toEqual({ taken: [idOf(1)], isLeft: false })
  expect(outbox.view().all[0]!.problem).toEqual(problem)
  expect((await outbox.flush()).taken).toEqual([])
})

test('what a keeper must see first is in the book, and says what it waits for', async () => {
  const outbox = openOn(memoryDisk(), async (entries) => ({
    outcome: 'answered',
    said: entries.map(({ id }) => ({ id, outcome: 'taken', heldFor: 'a keeper' })),
  }))
  await outbox.add([item(0)])
  expect((await outbox.flush()).taken).toEqual([idOf(0)])
  expect(outbox.view().all[0]!.taken).toEqual({ at: 0, heldFor: 'a keeper' })
})

test('an entry over which the server fails is found, and holds up no other', async () => {
  const poison = idOf(3)
  const requests: string[][] = []
  const outbox = openOn(memoryDisk(), async (entries) => {
    requests.push(entries.map(({ id }) => id))
    return entries.some(({ id }) => id === poison) ? { outcome: 'fault', said: '500' } : takesAll(entries)
  })
  await outbox.add(items(8))
  const { taken: ids, isLeft } = await outbox.flush()
  expect(ids).toHaveLength(7)
  expect(isLeft).toBe(true)
  await outbox.add([item(8)])
  requests.length = 0
  await outbox.flush()
  // From now on it goes by itself, after the others.
  expect(requests).toEqual([[idOf(8)], [poison]])
  expect(outbox.view().all.find(({ entry }) => entry.id === poison)!.fault).toBe('500')
})

test('a server that fails over everything is left alone after three single entries', async () => {
  let singles = 0
  const outbox = openOn(memoryDisk(), async (entries) => {
    if (entries.length === 1) singles += 1
    return { outcome: 'fault', said: '500' }
  })
  await outbox.add(items(8))
  expect(await outbox.flush()).toEqual({ taken: [], isLeft: true })
  expect(singles).toBe(3)
})

test('confirming sends the same id again, with the pointers marked', async () => {
  const sent: Entry[] = []
  const outbox = openOn(memoryDisk(), async (entries) => {
    sent.push(...entries)
    const [one] = entries
    const isConfirmed = one!.confirmed?.includes('/at') === true
    return { outcome: 'answered', said: [isConfirmed ? taken(one!.id) : { id: one!.id, outcome: 'refused', problem }] }
  })
  await outbox.add([item(0)])
  await outbox.flush()
  await outbox.confirm(idOf(0))
  expect((await outbox.flush()).taken).toEqual([idOf(0)])
  expect(sent.map(({ id, confirmed }) => [id, confirmed])).toEqual([
    [idOf(0), undefined],
    [idOf(0), ['/at']],
  ])
})

test('only what was refused can be thrown away: what waits may be in the book already', async () => {
  const disk = memoryDisk()
  const outbox = openOn(disk, silent)
  await outbox.add([item(0)])
  await outbox.drop(idOf(0))
  expect(labels(outbox)).toEqual(['reading 0'])
  await disk.change(idOf(0), (one) => ({ ...one, problem }))
  await outbox.drop(idOf(0))
  expect(labels(outbox)).toEqual([])
})

test('two pages of one device see each other’s entries, and what one has heard the other does not undo', async () => {
  const disk = memoryDisk()
  const [one, two] = [openOn(disk, takesAll), openOn(disk, silent)]
  await one.add([item(0)])
  await two.add([item(1)])
  await one.add([item(2)])
  expect(labels(one)).toEqual(['reading 0', 'reading 1', 'reading 2'])
  await one.flush()
  await two.look()
  expect(labels(two)).toEqual([])
  expect((await two.flush()).isLeft).toBe(false)
})

test('a device that is full: the open page holds it, says so, still sends it, and gives it to the device when there is room', async () => {
  const disk = memoryDisk()
  let answer = silent
  const outbox = openOn(disk, (entries) => (answer === silent ? silent() : takesAll(entries)))
  disk.failure = new DOMException('There is no room.', 'QuotaExceededError')
  expect(await outbox.add([item(0)])).toBe('page')
  expect(outbox.view()).toMatchObject({ trouble: 'There is no room.' })
  expect([...outbox.view().onPage]).toEqual([idOf(0)])
  await outbox.flush()
  expect(labels(outbox)).toEqual(['reading 0'])
  disk.failure = null
  await outbox.flush()
  expect(outbox.view()).toMatchObject({ trouble: null, onPage: new Set() })
  expect([...disk.kept.keys()]).toEqual([idOf(0)])
  disk.failure = new DOMException('There is no room.', 'QuotaExceededError')
  answer = async () => ({ outcome: 'no-answer' })
  await outbox.add([item(1)])
  expect((await outbox.flush()).taken).toContain(idOf(1))
  // Once the book has it nobody need hold it any more.
  expect(outbox.view().onPage).toEqual(new Set())
})

test('what was written while something is being sent goes in the same go or the next', async () => {
  const disk = memoryDisk()
  let more: Promise<unknown> = Promise.resolve()
  const outbox = openOn(disk, async (entries) => {
    if (entries.some(({ id }) => id === idOf(0))) more = outbox.add([item(1)]).then(() => outbox.flush())
    return takesAll(entries)
  })
  await outbox.add([item(0)])
  await outbox.flush()
  await more
  expect(labels(outbox)).toEqual([])
})

test('of those that arrived the last twenty stay in sight, for half a day', async () => {
  clock.now = 0
  const disk = memoryDisk()
  const outbox = openOn(disk, takesAll)
  await outbox.add(items(25))
  await outbox.flush()
  expect(outbox.view().all.map(({ label }) => label)).toEqual(
    items(25)
      .slice(5)
      .map(({ label }) => label),
  )
  clock.now = 12 * 3_600_000
  await outbox.flush()
  expect(outbox.view().all).toHaveLength(20)
  clock.now += 1
  await outbox.flush()
  expect(outbox.view().all).toEqual([])
})
