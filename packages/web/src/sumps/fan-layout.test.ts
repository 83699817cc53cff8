import { expect, test } from 'vitest'
import type { HistoryEntry } from '../api/types.ts'
import {
  type FanDay,
  hardnessSaid,
  marksOf,
  middleOf,
  outlineOf,
  runsOf,
  scaleOf,
  thinned,
  timesOf,
} from './fan-layout.ts'

const day = 86_400_000
const fan = (at: number, mean = 8): FanDay => ({
  at: at * day,
  mean,
  low90: mean - 1,
  high90: mean + 1,
  low50: mean - 0.4,
  high50: mean + 0.4,
})
const days = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => fan(from + i))
const place = { x: (at: number) => at / day, y: (value: number) => 100 - 10 * value }

test('days between records are one run', () => {
  const runs = runsOf(days(1, 10), { records: [0, 5 * day, 11 * day], charges: [] })
  expect(runs.map((run) => run.length)).toEqual([10])
})

test('three weeks without a record are left as a gap, just three are not', () => {
  expect(runsOf(days(1, 30), { records: [0, 21 * day], charges: [] })).toHaveLength(1)
  const runs = runsOf(days(1, 30), { records: [0, 2.5 * day, 24 * day, 29 * day], charges: [] })
  expect(runs.map((run) => [run[0]!.at / day, run.at(-1)!.at / day])).toEqual([
    [1, 2],
    [24, 30],
  ])
})

test('a charge begins another run: nothing led there', () => {
  const runs = runsOf(days(1, 6), { records: [0, 3.5 * day, 7 * day], charges: [3.5 * day] })
  expect(runs.map((run) => run.map(({ at }) => at / day))).toEqual([
    [1, 2, 3],
    [4, 5, 6],
  ])
})

test('a long run is drawn with fewer days, its ends and its peaks kept', () => {
  const run = days(1, 1000).map((one, n) => (n === 500 ? fan(501, 12) : one))
  const few = thinned(run, 100)
  expect(few.length).toBeLessThanOrEqual(100)
  expect(few.length).toBeGreaterThan(90)
  expect([few[0], few.at(-1)]).toEqual([run[0], run.at(-1)])
  // Nothing but day 501 leaves 7 to 9: its 13 is the highest there is.
  expect(Math.max(...few.map(({ high90 }) => high90))).toBe(13)
  expect(Math.min(...few.map(({ low90 }) => low90))).toBe(7)
  expect(few.every((one, n) => n === 0 || one.at > few[n - 1]!.at)).toBe(true)
  expect(thinned(run.slice(0, 100), 100)).toEqual(run.slice(0, 100))
})

test('a fan goes along its upper ends and back along its lower ones', () => {
  expect(outlineOf([fan(1), fan(2, 7)], 'low90', place)).toBe('M1.0 10.0L2.0 20.0L2.0 40.0L1.0 30.0Z')
  expect(outlineOf([fan(1)], 'low50', place)).toBe('')
  expect(middleOf([fan(1), fan(2, 7)], place)).toBe('M1.0 20.0L2.0 30.0')
})

test('the days ahead stretch the scale a little, and never so far that the past is lost', () => {
  const past = [fan(1, 7), fan(2, 8)]
  const calm = scaleOf({ past, ahead: [fan(3, 8.2)], marks: [], limits: [6, 10] })
  expect([calm.from, calm.to]).toEqual([6, 10])
  // 6 to 10 and a third of that: 11.4 at most.
  const wild = scaleOf({ past, ahead: [fan(30, 80)], marks: [], limits: [6, 10] })
  expect(wild.to).toBe(12)
  expect(wild.from).toBeGreaterThanOrEqual(0)
})

test('nothing known still makes a scale', () => {
  expect(scaleOf({ past: [], ahead: [], marks: [], limits: [] })).toMatchObject({ from: 0, to: 1 })
})

const entry = (more: Partial<HistoryEntry>): HistoryEntry => ({
  at: '2026-03-03T09:00:00Z',
  entry: 'e1',
  kind: 'reading',
  by: null,
  concentration: null,
  ph: null,
  hardness: 300,
  hardnessClass: null,
  text: '',
  withdrawn: false,
  reason: null,
  ...more,
})

test('marks are what was read, with what was set aside and what is in doubt', () => {
  const history = [
    entry({}),
    entry({ entry: 'e2', withdrawn: true }),
    entry({ entry: 'e3', hardness: null }),
    entry({ entry: 'e4', at: '2025-01-01T09:00:00Z' }),
  ]
  const marks = marksOf(history, {
    said: hardnessSaid,
    doubted: new Set(['e1']),
    from: Date.parse('2026-01-01T00:00:00Z'),
  })
  expect(marks).toMatchObject([
    { entry: 'e1', value: 300, isWithdrawn: false, isInDoubt: true },
    { entry: 'e2', isWithdrawn: true, isInDoubt: false },
  ])
  expect(timesOf(history, ['reading'], 0)).toHaveLength(3)
  expect(timesOf(history, ['charge'], 0)).toEqual([])
})

test('a strip’s class is drawn between its ends', () => {
  const said = (low: number | null, high: number | null) =>
    hardnessSaid(entry({ hardness: null, hardnessClass: { low, high } }))
  expect(said(250, 425)).toEqual({ value: 337.5, span: { low: 250, high: 425 } })
  expect(said(null, 25)).toEqual({ value: 12.5, span: { low: 0, high: 25 } })
  expect(said(425, null)).toEqual({ value: 425, span: null })
  expect(hardnessSaid(entry({ hardness: null }))).toBeNull()
})
