import { expect, test } from 'vitest'
import type { Labels } from '../simulate/labels.ts'
import { type Doubt, scoreDoubts } from './doubts.ts'

const day = 86_400_000
const labels: Labels = {
  wrongReadings: [
    { kind: 'misread', sump: 's1', entry: 'm', atMs: 0, error: 9 },
    { kind: 'wrong-sump', sump: 's1', entry: 'w', atMs: 0, error: 2 },
  ],
  missing: [{ kind: 'unlogged-addition', sump: 's2', atMs: 100 * day, volume: 30, share: 0.2 }],
  instrumentsOff: [{ instrument: 'r1', atMs: 0, offset: 0.5, entries: ['i1', 'i2'] }],
}
const doubt = (kind: string, more: Partial<Doubt>): Doubt => ({
  kind,
  sump: 's1',
  entry: null,
  entries: [],
  atMs: 0,
  ...more,
})
const score = (...doubts: Doubt[]) => scoreDoubts(doubts, labels)

test('without doubts nothing is found and nothing is false', () => {
  expect(score()).toEqual({
    misreads: { found: 0, of: 1 },
    wrongSumps: { found: 0, of: 1 },
    missing: { found: 0, of: 1 },
    instruments: { found: 0, of: 1 },
    falseDoubts: 0,
  })
})

test('a misread is found by a doubt about its entry, once however many doubts name it', () => {
  const about = doubt('misread', { entry: 'm' })
  expect(score(about, about)).toMatchObject({ misreads: { found: 1, of: 1 }, falseDoubts: 0 })
  expect(score(doubt('misread', { entry: 'other' }))).toMatchObject({ misreads: { found: 0 }, falseDoubts: 1 })
})

test('a misread taken for an unlogged pour is not found, and no false doubt either', () => {
  expect(score(doubt('unlogged-water', { entry: 'm' }))).toMatchObject({ misreads: { found: 0 }, falseDoubts: 0 })
})

test('a missing record is found from four days before it to fifteen after, in its own sump', () => {
  const at = (days: number, sump = 's2') => score(doubt('unlogged-water', { sump, atMs: days * day }))
  expect(at(96)).toMatchObject({ missing: { found: 1 }, falseDoubts: 0 })
  expect(at(95.9)).toMatchObject({ missing: { found: 0 }, falseDoubts: 1 })
  expect(at(115)).toMatchObject({ missing: { found: 1 }, falseDoubts: 0 })
  expect(at(115.1)).toMatchObject({ missing: { found: 0 }, falseDoubts: 1 })
  expect(at(100, 's1')).toMatchObject({ missing: { found: 0 }, falseDoubts: 1 })
})

test('one doubt about an instrument answers for its whole round', () => {
  expect(score(doubt('instrument', { entries: ['i2'] }))).toMatchObject({ instruments: { found: 1 }, falseDoubts: 0 })
})
