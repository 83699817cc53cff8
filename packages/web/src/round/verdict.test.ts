import { expect, test } from 'vitest'
import type { SumpNow } from '../api/types.ts'
import { someSump } from '../standing/testing.ts'
import { sayExpected } from './expected.ts'
import { standsWords } from './read-strength.ts'
import { nothingTyped, type Typed } from './typed.ts'
import { verdictOf as verdictAt } from './verdict.ts'

const sump = someSump
const reader = { units: 'metric' } as const
/** Half an hour after the book worked out where the sump stands. */
const now = Date.parse('2026-03-03T09:30:00Z')
const verdictOf = (typed: Typed, sump: SumpNow, reader: Parameters<typeof verdictAt>[2]) =>
  verdictAt(typed, sump, reader, now)
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
  expect(notes).toEqual(['No level read now: reckoned with about 170 L, as the records have it.'])
})

test('at the mark is a level, of the mark', () => {
  const { level } = verdictOf(typed({ levelBy: 'mark' }), sump, reader)
  expect(level).toEqual({ litres: 200, entry: { volume: 200 }, typed: { volume: 'at the mark' } })
})

test('a quarter by eye is a class half a quarter up and down, its doubt that of an even spread', () => {
  const { level, advice } = verdictOf(typed({ levelBy: 'quarter', level: '½', brix: '3.4' }), sump, reader)
  // Of 200 L: 100, from 75 to 125; 25 / √3 = 14.43 (JCGM 100:2008, 4.3.7).
  expect(level).toMatchObject({
    litres: 100,
    entry: { volume: { low: 75, high: 125 } },
    typed: { volume: 'about ½ of the mark' },
  })
  expect(level?.sd).toBeCloseTo(14.434, 3)
  expect(advice).not.toBeNull()
  expect(verdictOf(typed({ levelBy: 'quarter', level: '' }), sump, reader).level).toBe(null)
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

const figure = (mean: number, sd: number) => ({ mean, sd, low90: mean - 1.645 * sd, high90: mean + 1.645 * sd })
/** 5.6 % ± 0.4, expected to show 3.5 ± 0.25 °Brix; a °Brix more than expected is worth 1.28 %. */
const expecting: SumpNow = {
  ...someSump,
  concentration: figure(5.6, 0.4),
  expected: { brix: figure(3.5, 0.25), gain: 1.28 },
}

test('a reading that fits is weighed with what was expected', () => {
  // 5.6 + 1.28 · (3.7 − 3.5) = 5.856 %, while 3.7 × 1.6 alone would be 5.92 %.
  const { concentration, questions } = verdictOf(typed({ level: '150', brix: '3.7' }), expecting, reader)
  expect(concentration!.mean).toBeCloseTo(5.856, 10)
  expect(concentration!.sd).toBeCloseTo(0.24, 10)
  expect(questions).toEqual([])
})

test('a reading far from what was expected is asked about once, and then counts alone', () => {
  // Twice half the interval is 0.8225 °Brix: 3.5 + 0.8225.
  const far = typed({ level: '150', brix: '4.4' })
  expect(verdictOf(far, expecting, reader).questions).toEqual([
    {
      field: 'brix',
      pointer: '/brix',
      text: '4.4',
      question: '4.4 is far from the 3.1–3.9 expected: read again?',
      yes: 'It reads 4.4',
    },
  ])
  const sure = verdictOf({ ...far, confirmed: { '/brix': '4.4' } }, expecting, reader)
  expect(sure.questions).toEqual([])
  expect(sure.concentration!.mean).toBeCloseTo(7.04, 10)
  expect(sure.advice?.recipe.action).toBe('top-up')
})

test('what was expected half a day ago is expected no more', () => {
  const late = verdictAt(typed({ brix: '9' }), expecting, reader, now + 12 * 3_600_000)
  expect(late.questions).toEqual([])
  expect(late.concentration!.mean).toBeCloseTo(14.4, 10)
})

test('while a record is in doubt the reading counts alone, without a recipe', () => {
  const doubt = { kind: 'misread', entry: 'x', open: true } as SumpNow['doubts'][number]
  const { advice, concentration, notes } = verdictOf(
    typed({ level: '150', brix: '3.7' }),
    { ...expecting, doubts: [doubt] },
    reader,
  )
  expect(advice).toBeNull()
  expect(concentration!.mean).toBeCloseTo(5.92, 10)
  expect(notes.join(' ')).toContain('No recipe while a record of this sump does not fit')
})

test('a level is seen by the plate and poured in true litres', () => {
  // The plate's 200 L are √(162 · 200) = 180 L: 150 seen are 135, and 45 are missing.
  const { advice, notes } = verdictOf(
    typed({ level: '150', brix: '3.4' }),
    { ...someSump, mark: { mean: 180, sd: 12, low90: 162, high90: 200 } },
    reader,
  )
  expect(advice?.recipe.add?.volume).toBeCloseTo(45, 9)
  expect(notes).toEqual(['Its mark is reckoned as 180 L, as the pours tell: so about 135 L in it.'])
})

test('a volume that the records know too badly is no ground for a pour', () => {
  const vague = { ...someSump, volume: { mean: 170, sd: 20, low90: 137, high90: 203 } }
  const { advice, notes } = verdictOf(typed({ brix: '3.4' }), vague, reader)
  expect(advice?.recipe.because).toEqual(['level-unknown'])
  expect(notes).toEqual([])
})

test('what is expected is said to the tenth, never below nothing', () => {
  expect(sayExpected({ brix: { low90: 4.86, high90: 5.64 } })).toBe('4.9–5.6')
  expect(sayExpected({ brix: { low90: -0.2, high90: 0.64 } })).toBe('0.0–0.6')
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
