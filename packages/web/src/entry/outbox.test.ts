import { expect, test } from 'vitest'
import type { Entry, Problem } from '../api/types.ts'
import { type Keep, openOutbox, type Sent } from './outbox.ts'

const ids = [
  '01900000-0000-7000-8000-000000000001',
  '01900000-0000-7000-8000-000000000002',
  '01900000-0000-7000-8000-000000000003',
]
const entry = (n: number): Entry => ({
  id: ids[n]!,
  at: '2026-11-25T07:00:00Z',
  kind: 'reading',
  sump: 's1',
  brix: 3 + n,
})
const item = (n: number) => ({ entry: entry(n), label: `reading ${n}` })

function memory(): Keep {
  const kept = new Map<string, string>()
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
    key: (i) => [...kept.keys()][i] ?? null,
    get length() {
      return kept.size
    },
  }
}

const taken: Sent = { outcome: 'taken' }
const silent: Sent = { outcome: 'no-answer' }
const problem: Problem = {
  title: 'refused',
  errors: [{ pointer: '/at', found: 'tomorrow', expected: 'not after now' }],
  confirmable: true,
}

test('an entry waits in storage until it is taken, and then leaves', async () => {
  const keep = memory()
  const outbox = openOutbox(keep, async () => taken)
  outbox.add([item(0)])
  expect(keep.length).toBe(1)
  expect(await outbox.flush()).toEqual([ids[0]])
  expect(keep.length).toBe(0)
  expect(outbox.list()).toEqual([])
})

test('no answer: everything stays, in order, and a page opened later finds and sends it', async () => {
  const keep = memory()
  const first = openOutbox(keep, async () => silent)
  first.add([item(1), item(0)])
  expect(await first.flush()).toEqual([])
  const seen: string[] = []
  const later = openOutbox(keep, async ({ id }) => {
    seen.push(id)
    return taken
  })
  expect(later.list().map(({ label }) => label)).toEqual(['reading 0', 'reading 1'])
  await later.flush()
  expect(seen).toEqual([ids[0], ids[1]])
})

test('a refused entry stays with its reason and does not hold up the next', async () => {
  const outbox = openOutbox(memory(), async ({ id }) => (id === ids[0] ? { outcome: 'refused', problem } : taken))
  outbox.add([item(0), item(1)])
  expect(await outbox.flush()).toEqual([ids[1]])
  expect(outbox.list()).toEqual([{ ...item(0), problem }])
  expect(await outbox.flush()).toEqual([])
})

test('confirming sends the same id again, with the pointers marked', async () => {
  const sent: Entry[] = []
  const outbox = openOutbox(memory(), async (entry) => {
    sent.push(entry)
    return entry.confirmed?.includes('/at') === true ? taken : { outcome: 'refused', problem }
  })
  outbox.add([item(0)])
  await outbox.flush()
  outbox.confirm(ids[0]!)
  expect(await outbox.flush()).toEqual([ids[0]])
  expect(sent.map(({ id, confirmed }) => [id, confirmed])).toEqual([
    [ids[0], undefined],
    [ids[0], ['/at']],
  ])
})

test('two pages of one device do not overwrite each other', () => {
  const keep = memory()
  const one = openOutbox(keep, async () => silent)
  const two = openOutbox(keep, async () => silent)
  one.add([item(0)])
  two.add([item(1)])
  one.add([item(2)])
  expect(one.list().map(({ entry: { id } }) => id)).toEqual(ids)
})

test('full storage: the entry is held while the page is open, and is still sent', async () => {
  const full: Keep = {
    ...memory(),
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError')
    },
  }
  const outbox = openOutbox(full, async () => taken)
  outbox.add([item(0)])
  expect(outbox.list()).toHaveLength(1)
  expect(await outbox.flush()).toEqual([ids[0]])
  expect(outbox.list()).toEqual([])
})
