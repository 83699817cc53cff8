import { expect, test } from 'vitest'
import type { StopRecord } from './stop-record.ts'
import { type Visit, visitsOf, walkCaughtUp } from './visit.ts'
import { type Done, loadWalk, markDone, newWalk, walkBegun, walkOn } from './walk.ts'

const seven = Date.parse('2026-11-25T07:00:00Z')
const minutes = (n: number) => n * 60_000
const record = { entries: ['e1'] } as StopRecord
const visit = (sump: string, after: number, done: Done | null = 'read'): Visit => ({
  draft: `draft-${sump}`,
  sump,
  done,
  at: seven + minutes(after),
  record,
})

test('a stop that was written and forgotten is done, with what it came to', () => {
  const walk = markDone(newWalk, 'a', 'poured', seven)
  const next = walkCaughtUp(walk, [visit('b', 2)], seven + minutes(3))
  expect(next.done).toEqual({ a: 'poured', b: 'read' })
  expect(next.records).toEqual({ b: record })
  expect(next.lastAt).toBe(seven + minutes(2))
})

test('the first stop of a round is found too', () => {
  expect(walkCaughtUp(newWalk, [visit('a', 0)], seven + minutes(1)).done).toEqual({ a: 'read' })
})

test('what the walk knows is left as it is', () => {
  const walk = markDone(newWalk, 'a', 'locked', seven + minutes(5))
  expect(walkCaughtUp(walk, [visit('a', 1), visit('b', 5), visit('c', 6, null)], seven + minutes(9))).toBe(walk)
})

test('what was done before somebody began anew does not come back', () => {
  expect(walkCaughtUp(walkBegun(seven + minutes(2)), [visit('a', 1)], seven + minutes(3)).done).toEqual({})
})

test('what was done long ago belongs to another round', () => {
  const now = seven + minutes(9 * 60)
  expect(walkOn(walkCaughtUp(loadWalk(now), [visit('a', 0)], now), now).done).toEqual({})
})

test('entries of other pages and of other versions tell of no stop', () => {
  expect(visitsOf([{}, { from: {} }, { from: visit('b', 2) }, { from: visit('a', 1) }])).toEqual([
    visit('a', 1),
    visit('b', 2),
  ])
})
