import { expect, test } from 'vitest'
import type { HistoryEntry } from '../api/types.ts'
import { historyOf, monthTicks, scaleOf } from './history-layout.ts'

const reading = (at: string, mean: number, more: Partial<HistoryEntry> = {}): HistoryEntry => ({
  at,
  entry: at,
  kind: 'reading',
  by: null,
  concentration: { mean, low90: mean - 0.3, high90: mean + 0.3 },
  ph: null,
  hardness: null,
  text: '',
  withdrawn: false,
  reason: null,
  ...more,
})
const charge = (at: string): HistoryEntry => ({ ...reading(at, 0), kind: 'charge', concentration: null })

test('readings three weeks apart are joined, a day more is a gap', () => {
  const joined = historyOf([reading('2026-03-01T07:00:00Z', 7), reading('2026-03-22T07:00:00Z', 8)], 0)
  expect(joined.runs.map((run) => run.length)).toEqual([2])
  const apart = historyOf([reading('2026-03-01T07:00:00Z', 7), reading('2026-03-23T07:00:00Z', 8)], 0)
  expect(apart.runs.map((run) => run.length)).toEqual([1, 1])
})

test('a charge between two readings parts them', () => {
  const { runs, charges } = historyOf(
    [reading('2026-03-01T07:00:00Z', 7), charge('2026-03-02T07:00:00Z'), reading('2026-03-03T07:00:00Z', 8)],
    0,
  )
  expect(runs.map((run) => run.length)).toEqual([1, 1])
  expect(charges).toHaveLength(1)
})

test('a withdrawn reading is shown apart and joins nothing', () => {
  const { points, withdrawn } = historyOf(
    [reading('2026-03-01T07:00:00Z', 7), reading('2026-03-02T07:00:00Z', 14, { withdrawn: true, reason: 'misread' })],
    0,
  )
  expect(points.map(({ mean }) => mean)).toEqual([7])
  expect(withdrawn.map(({ mean }) => mean)).toEqual([14])
})

test('what lies before the period is left out', () => {
  expect(historyOf([reading('2026-03-01T07:00:00Z', 7)], Date.parse('2026-03-01T07:00:01Z')).points).toEqual([])
})

test('the scale holds every interval and the whole band', () => {
  const { from, to } = scaleOf(historyOf([reading('2026-03-01T07:00:00Z', 4)], 0), { low: 6, high: 10 })
  expect(from).toBeLessThan(3.7)
  expect(to).toBeGreaterThan(10)
})

test('a reading set aside does not stretch the scale', () => {
  const entries = [reading('2026-03-01T07:00:00Z', 8), reading('2026-03-02T07:00:00Z', 95, { withdrawn: true })]
  expect(scaleOf(historyOf(entries, 0), { low: 6, high: 10 }).to).toBeLessThan(12)
})

test('months are named as often as there is room', () => {
  const [from, to] = [Date.parse('2026-01-15T00:00:00Z'), Date.parse('2026-11-15T00:00:00Z')]
  expect(monthTicks(from, to, 12).map((tick) => new Date(tick).getUTCMonth() + 1)).toEqual([
    2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
  ])
  expect(monthTicks(from, to, 4).map((tick) => new Date(tick).getUTCMonth() + 1)).toEqual([4, 7, 10])
})
