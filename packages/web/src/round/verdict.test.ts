import { expect, test } from 'vitest'
import type { SumpNow } from '../api/types.ts'
import { nothingTyped, standsWords, type Typed, verdictOf } from './verdict.ts'

/** 200 L at the mark, 250 L to the brim, factor 1.6, band 6 to 10 %, target 8 %. */
const sump: SumpNow = {
  sump: 'mill-7',
  name: 'Mill 7',
  place: 'bay C',
  order: 1,
  fluid: { id: 'blue', name: 'Blue 40', class: 'soluble-oil' },
  bench: {
    brixFactor: 1.6,
    brixChart: null,
    resolution: 0.2,
    fillVolume: 200,
    capacity: 250,
    minVolume: 60,
    holdUp: 0,
    dipTable: null,
    target: 8,
    band: { low: 6, high: 10 },
    maxStrength: 20,
    minStrength: 0,
    class: 'soluble-oil',
    waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
    container: null,
    measure: null,
  },
  concentration: { mean: 7, sd: 0.2, low90: 6.7, high90: 7.3 },
  volume: { mean: 170, sd: 4, low90: 163, high90: 177 },
  lastStrength: null,
  lastLevel: null,
  sentence: '',
}
const reader = { units: 'metric' } as const
const typed = (given: Partial<Typed>): Typed => ({ ...nothingTyped, ...given })
const withBench = (bench: Partial<SumpNow['bench']>): SumpNow => ({ ...sump, bench: { ...sump.bench, ...bench } })

test('level and °Brix become a strength and a recipe at once', () => {
  // 3.4 × 1.6 = 5.44 %. From 150 to 200 L at 8 %: (8 × 200 − 5.44 × 150) / 50 = 15.68 %.
  const { concentration, advice, stands } = verdictOf(typed({ level: '150', brix: '3.4' }), sump, reader)
  expect(concentration?.mean).toBeCloseTo(5.44, 12)
  expect(advice?.recipe.action).toBe('top-up')
  expect(advice?.recipe.add).toMatchObject({ volume: expect.closeTo(50, 9), strength: expect.closeTo(15.68, 9) })
  expect(stands).toBe('under its band of 6–10\u00a0%')
})

test('a comma is as good as a point', () => {
  const point = verdictOf(typed({ level: '150.5', brix: '3.4' }), sump, reader)
  expect(verdictOf(typed({ level: '150,5', brix: '3,4' }), sump, reader)).toEqual({
    ...point,
    level: { ...point.level, typed: { volume: '150,5 L' } },
  })
})

test('nothing follows, and nothing is wrong, while nothing is typed', () => {
  expect(verdictOf(nothingTyped, sump, reader)).toEqual({
    level: null,
    brix: null,
    concentration: null,
    stands: '',
    advice: null,
    faults: [],
    questions: [],
    notes: [],
  })
})

test('"3." is on its way to "3.4" and no fault', () => {
  expect(verdictOf(typed({ brix: '3.' }), sump, reader)).toMatchObject({ brix: 3, faults: [] })
})

test('without a level the records’ is taken, and said', () => {
  const { advice, notes } = verdictOf(typed({ brix: '3.4' }), sump, reader)
  expect(advice?.recipe.add?.volume).toBeCloseTo(30, 9)
  expect(notes).toEqual(['No level read now: reckoned with 170 L from the records.'])
})

test('at the mark is a level, of the mark', () => {
  const { level } = verdictOf(typed({ levelBy: 'mark' }), sump, reader)
  expect(level).toEqual({ litres: 200, entry: { volume: 200 }, typed: { volume: 'at the mark' } })
})

test('a dip is read through the table and written down as a dip', () => {
  const dipped = withBench({
    dipTable: [
      [0, 0],
      [100, 50],
      [400, 250],
    ],
  })
  // Half way from 100 to 400 mm: half way from 50 to 250 L.
  const { level } = verdictOf(typed({ levelBy: 'dip', level: '250' }), dipped, reader)
  expect(level).toEqual({ litres: 150, entry: { level: 250 }, typed: { level: '250 mm' } })
  const beyond = verdictOf(typed({ levelBy: 'dip', level: '401' }), dipped, reader)
  expect(beyond.faults).toEqual([{ field: 'level', found: '401', expected: 'from 0 to 400 mm, as the dip table runs' }])
})

test('with the pumps running what the lines hold counts', () => {
  const { advice } = verdictOf(
    typed({ level: '150', brix: '3.4', pumps: 'running' }),
    withBench({ holdUp: 20 }),
    reader,
  )
  expect(advice?.recipe.add?.volume).toBeCloseTo(30, 9)
})

test('with the pumps running and nobody knowing the lines, the doubt is said', () => {
  const { notes } = verdictOf(typed({ level: '150', brix: '5', pumps: 'running' }), sump, reader)
  expect(notes.join(' ')).toContain('reads low')
})

test('text that is no number, a negative level and a Brix off the scale are faults at their fields', () => {
  expect(verdictOf(typed({ brix: 'x' }), sump, reader).faults).toMatchObject([{ field: 'brix', found: '"x"' }])
  expect(verdictOf(typed({ level: '-5' }), sump, reader).faults).toEqual([
    { field: 'level', found: '-5', expected: 'at least 0' },
  ])
  const noFactor = withBench({ brixFactor: null })
  expect(verdictOf(typed({ brix: '95' }), noFactor, reader).faults).toEqual([])
  expect(verdictOf(typed({ brix: '95.1' }), noFactor, reader).faults).toEqual([
    { field: 'brix', found: '95.1', expected: 'from 0 to 95 °Brix' },
  ])
})

test('a Brix that would be more than neat concentrate is refused; neat concentrate is asked about', () => {
  // Factor 1.6: 62.5 °Brix is 100 %.
  expect(verdictOf(typed({ brix: '62.5' }), sump, reader)).toMatchObject({
    faults: [],
    questions: [{ pointer: '/brix' }],
  })
  expect(verdictOf(typed({ brix: '63' }), sump, reader).faults).toEqual([
    { field: 'brix', found: '63 °Brix, which would be 101 %', expected: 'no more than neat concentrate, 100 %' },
  ])
})

test('a level more than 5 % above the brim is refused; at 5 % it is asked about', () => {
  // 1.05 × 250 = 262.5 L
  expect(verdictOf(typed({ level: '262.5' }), sump, reader)).toMatchObject({
    faults: [],
    questions: [{ pointer: '/volume' }],
  })
  expect(verdictOf(typed({ level: '262.6' }), sump, reader).faults).toEqual([
    { field: 'level', found: '263 L', expected: 'at most the brim, 250 L' },
  ])
})

test('what is hardly so is asked once, and the answer holds for that text alone', () => {
  const high = typed({ level: '150', brix: '30' })
  expect(verdictOf(high, sump, reader).questions).toMatchObject([{ pointer: '/brix', text: '30' }])
  expect(verdictOf({ ...high, confirmed: { '/brix': '30' } }, sump, reader).questions).toEqual([])
  expect(verdictOf({ ...high, brix: '31', confirmed: { '/brix': '30' } }, sump, reader).questions).toHaveLength(1)
})

test('more than three times the target is asked about; just three times is not', () => {
  // Target 8 %: three times is 24 %, at factor 1.6 that is 15 °Brix.
  expect(verdictOf(typed({ level: '150', brix: '15' }), sump, reader).questions).toEqual([])
  expect(verdictOf(typed({ level: '150', brix: '15.1' }), sump, reader).questions).toMatchObject([{ pointer: '/brix' }])
})

test('a level above the mark and under the brim is asked about', () => {
  expect(verdictOf(typed({ level: '215' }), sump, reader).questions).toMatchObject([
    { field: 'level', pointer: '/volume' },
  ])
})

test('without a factor the reading still counts, and the lack is said', () => {
  const { brix, concentration, notes } = verdictOf(
    typed({ level: '150', brix: '3.4' }),
    withBench({ brixFactor: null }),
    reader,
  )
  expect({ brix, concentration }).toEqual({ brix: 3.4, concentration: null })
  expect(notes.join(' ')).toContain('factor of this fluid is not known')
})

test('a level under the pumps’ suction is said before any strength is read', () => {
  expect(verdictOf(typed({ level: '59.9' }), sump, reader).notes.join(' ')).toContain('suction')
  expect(verdictOf(typed({ level: '60' }), sump, reader).notes).toEqual([])
})

test('levels are typed in the shop’s gallons', () => {
  // 40 × 3.785411784 L
  const { level } = verdictOf(typed({ level: '40' }), sump, { units: 'us' })
  expect(level).toMatchObject({ litres: expect.closeTo(151.41647136, 8), typed: { volume: '40 gal' } })
})

test('where in the band: foot and top are its outer sixths', () => {
  const at = (mean: number) => standsWords({ mean }, { band: { low: 6, high: 12 } })
  expect([5.9, 6, 6.9, 7, 9, 11, 11.1, 12, 12.1].map(at).map((words) => words.split(' its ')[0])).toEqual([
    'under',
    'at the foot of',
    'at the foot of',
    'in',
    'in',
    'in',
    'at the top of',
    'at the top of',
    'above',
  ])
})
