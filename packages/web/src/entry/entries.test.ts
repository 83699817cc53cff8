import { advise, type Recipe } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import type { SumpNow } from '../api/types.ts'
import { nothingTyped, type Typed } from '../round/typed.ts'
import { verdictOf as verdictAt } from '../round/verdict.ts'
import { someSump } from '../standing/testing.ts'
import {
  additionEntry,
  isPour,
  labelOf,
  measurementEntry,
  observationEntry,
  pouredAsWritten,
  readingEntry,
  setupEntry,
  skipEntry,
  verdictEntry,
  voidEntry,
} from './entries.ts'
import type { Stamp } from './stamp.ts'

const reader = { units: 'metric' } as const
const verdictOf = (typed: Typed, of: SumpNow) => verdictAt(typed, of, reader, Date.parse(at))
const at = '2026-11-25T08:30:00.000+01:00'
function stamp(): Stamp {
  let count = 0
  return { at, recordedAt: at, by: 'RK', newId: () => `01900000-0000-7000-8000-00000000000${++count}` }
}
const sump: SumpNow = {
  ...someSump,
  bench: { ...someSump.bench, minVolume: null },
  concentration: null,
  volume: null,
}
const figure = (mean: number) => ({ mean, sd: 0, low90: mean, high90: mean })
const advised = (volume: number, concentration: number, bench: Partial<SumpNow['bench']> = {}) =>
  advise({ volume: figure(volume), concentration: figure(concentration) }, { ...sump.bench, ...bench }, reader)

test('a reading says what was found, what was typed, who and when', () => {
  const typed: Typed = { ...nothingTyped, level: '150', brix: '3,4', pumps: 'running' }
  expect(readingEntry(typed, verdictOf(typed, sump), 'mill-7', stamp())).toEqual({
    id: '01900000-0000-7000-8000-000000000001',
    at,
    recordedAt: at,
    by: 'RK',
    kind: 'reading',
    sump: 'mill-7',
    volume: 150,
    pumps: 'running',
    brix: 3.4,
    typed: { volume: '150 L', brix: '3,4 °Brix' },
  })
})

test('nothing read is no reading; a level alone is one, and says nothing of °Brix', () => {
  expect(readingEntry(nothingTyped, verdictOf(nothingTyped, sump), 'mill-7', stamp())).toBe(null)
  const level: Typed = { ...nothingTyped, level: '150' }
  const entry = readingEntry(level, verdictOf(level, sump), 'mill-7', stamp())
  expect(entry).toMatchObject({ volume: 150, pumps: 'stopped' })
  expect(entry).not.toHaveProperty('brix')
})

test('what was confirmed is marked, and a confirmation of another text is not', () => {
  const typed: Typed = { ...nothingTyped, level: '215', brix: '30', confirmed: { '/brix': '30', '/volume': '220' } }
  expect(readingEntry(typed, verdictOf(typed, sump), 'mill-7', stamp())).toMatchObject({ confirmed: ['/brix'] })
})

test('poured as written: the recipe’s mix, its water and the sump’s fluid', () => {
  // From 150 to 200 L, 5.44 to 8 %: 50 L at 15.68 %.
  expect(pouredAsWritten(advised(150, 5.44), sump, reader, stamp())).toMatchObject([
    {
      kind: 'addition',
      sump: 'mill-7',
      volume: 50,
      strength: 15.68,
      water: 'di',
      fluid: 'blue',
      typed: { volume: '50 L', strength: '15.7 %' },
    },
  ])
})

test('said in buckets, what the buckets make is what was poured', () => {
  // 50 L at 15.68 %: 42.16 L water and 7.84 L concentrate; to marks of 1 L: 42 and 8, that is 50 L at 16 %.
  const container = { id: 'b', name: 'Bucket', capacity: 12, graduation: 1 }
  expect(pouredAsWritten(advised(150, 5.44, { container }), sump, reader, stamp())).toMatchObject([
    { volume: 50, strength: 16 },
  ])
})

test('what is drawn off stands before what is poured', () => {
  // Full at 3 %, mix of 20 % at most: d = (8 × 200 − 3 × 200) / (20 − 3) = 58.82 L out, as much in.
  expect(pouredAsWritten(advised(200, 3), sump, reader, stamp())).toMatchObject([
    { kind: 'drawoff', volume: 58.82, id: '01900000-0000-7000-8000-000000000001' },
    { kind: 'addition', volume: 58.82, strength: 20, id: '01900000-0000-7000-8000-000000000002' },
  ])
})

test('a change of the charge is never one tap, and nothing to pour is no pour', () => {
  const change: Recipe = { ...advised(200, 3).recipe, action: 'change' }
  expect(isPour(change)).toBe(false)
  expect(isPour(advised(200, 8).recipe)).toBe(false)
  expect(() => pouredAsWritten({ recipe: change, dispensed: null }, sump, reader, stamp())).toThrow('change')
})

test('filled to the mark says so, and no volume that nobody measured', () => {
  const entry = additionEntry({ volume: null, strength: 5, water: null }, sump, reader, stamp())
  expect(entry).toMatchObject({ kind: 'addition', toMark: true, strength: 5 })
  expect(entry).not.toHaveProperty('volume')
  expect(entry).not.toHaveProperty('water')
})

test('fine everywhere is no observation', () => {
  expect(observationEntry([], 'mill-7', stamp())).toBe(null)
  expect(observationEntry(['foam'], 'mill-7', stamp())).toMatchObject({ kind: 'observation', signs: ['foam'] })
})

test('a pour that was not made keeps its reason as a note', () => {
  expect(skipEntry('not poured', 'no concentrate', 'mill-7', stamp())).toMatchObject({
    kind: 'skip',
    reason: 'not poured',
    note: 'no concentrate',
  })
  expect(skipEntry('locked', '', 'mill-7', stamp())).not.toHaveProperty('note')
})

test('an entry is set aside by another entry that names it', () => {
  expect(voidEntry('01900000-0000-7000-8000-00000000000f', 'misread', 'mill-7', stamp())).toMatchObject({
    kind: 'void',
    entry: '01900000-0000-7000-8000-00000000000f',
    reason: 'misread',
    sump: 'mill-7',
  })
})

test('a change of a thing says what was before; a new thing had nothing before', () => {
  const about = { kind: 'sump', id: 'mill-7' } as const
  expect(setupEntry(about, { fillVolume: 210 }, { fillVolume: 200 }, stamp())).toMatchObject({
    kind: 'setup',
    about,
    changes: { fillVolume: 210 },
    was: { fillVolume: 200 },
  })
  expect(setupEntry(about, { name: 'Mill 7', fluid: 'blue' }, null, stamp())).not.toHaveProperty('was')
})

test('the queue names each entry in a few words', () => {
  const [addition] = pouredAsWritten(advised(150, 5.44), sump, reader, stamp())
  expect(labelOf(addition!, 'Mill 7', reader)).toBe('Mill 7: added 50 L')
  expect(labelOf(skipEntry('locked', '', 'mill-7', stamp()), 'Mill 7', reader)).toBe('Mill 7: locked')
})

test('an analysis and a check say what was measured, of what, and how it was typed', () => {
  const entry = measurementEntry(
    'analysis',
    { kind: 'water', id: 'tap' },
    { values: { hardness: 250 }, typed: { hardness: '14 °dH' } },
    stamp(),
  )
  expect(entry).toMatchObject({ kind: 'analysis', about: { kind: 'water', id: 'tap' }, hardness: 250, at })
  expect(entry.typed).toEqual({ hardness: '14 °dH' })
  expect(entry).not.toHaveProperty('note')
})

test('a set-up can hold from a day', () => {
  const about = { kind: 'fluid', id: 'blue' } as const
  expect(setupEntry(about, { brixChart: null }, null, stamp(), '2026-11-01')).toMatchObject({ from: '2026-11-01' })
  expect(setupEntry(about, { brixChart: null }, null, stamp())).not.toHaveProperty('from')
})

test('a verdict names the entries it is on and what was behind them', () => {
  expect(verdictEntry(['e1', 'e2'], 'stands', 'mill-7', stamp())).toMatchObject({
    kind: 'verdict',
    sump: 'mill-7',
    entries: ['e1', 'e2'],
    answer: 'stands',
  })
})

test('an addition is said as what it was', () => {
  const of = { id: 'x', at, kind: 'addition', sump: 'mill-7' } as const
  expect(labelOf({ ...of, concentrate: 3 }, 'Mill 7', reader)).toBe('Mill 7: added 3 L of concentrate')
  expect(labelOf({ ...of, toMark: true }, 'Mill 7', reader)).toBe('Mill 7: filled to the mark')
  expect(labelOf(of, 'Mill 7', reader)).toBe('Mill 7: added an unmeasured amount')
})
