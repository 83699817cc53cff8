import { advise, type RecipeBench } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { benchTexts, emptyBench, readBench, recipeBench, strengthTexts, sumpToPour } from './bench.ts'

const bench: RecipeBench = {
  brixFactor: 1.6,
  brixChart: null,
  resolution: 0.2,
  fillVolume: 200,
  capacity: 240,
  minVolume: 80,
  holdUp: 0,
  dipTable: null,
  target: 8,
  band: { low: 6, high: 10 },
  maxStrength: 20,
  minStrength: 0,
  class: 'semi-synthetic',
  waters: [],
  container: null,
  measure: null,
}
const figure = (mean: number, sd: number) => ({ mean, sd, low90: mean - 1.645 * sd, high90: mean + 1.645 * sd })
const mill = { volume: figure(162.3456, 2), concentration: figure(5.6, 0.1), bench }
const shop = { waters: [], container: null, measure: null, class: null }

test('a sump fills the bench in the shop’s unit, with what each figure may be off', () => {
  // 200 L are 52.83 US gallons; 1.645 × 0.1 % are 0.16 %.
  const texts = benchTexts(mill, 'us')
  expect(texts).toMatchObject({ fillVolume: '52.83', target: '8', low: '6', high: '10', concentrationGive: '0.16' })
})

test('figures left as the book has them keep all their digits, a changed one counts as typed', () => {
  const texts = benchTexts(mill, 'us')
  expect(readBench(texts, 'us', mill).standing.volume?.mean).toBe(162.3456)
  // 40 US gallons of 3.785411784 L.
  expect(readBench({ ...texts, volume: '40' }, 'us', mill).standing.volume?.mean).toBeCloseTo(151.41647, 4)
})

// 5.6 % in 162 L hold 9.072 L; 200 L at 8 % hold 16: 6.928 L in 38 L are 18.23 %.
test('typed figures alone make a recipe, comma or point', () => {
  const typed = {
    ...emptyBench,
    volume: '162',
    concentration: '5,6',
    fillVolume: '200',
    target: '8',
    low: '6',
    high: '10',
  }
  const read = readBench(typed, 'metric', null)
  expect(read).toMatchObject({ faults: {}, missing: [] })
  const { recipe } = advise(read.standing, recipeBench(read, shop), { units: 'metric' })
  expect(recipe.add).toMatchObject({ volume: 38, strength: expect.closeTo(18.2316, 3) })
  expect(sumpToPour(read, recipeBench(read, shop))).toMatchObject({ volume: 162, concentration: 5.6, fillVolume: 200 })
})

test('what a recipe cannot do without is named; the level is not among it', () => {
  expect(readBench(emptyBench, 'metric', null).missing).toEqual(['the strength now', 'the full mark', 'the target'])
  const known = { ...emptyBench, concentration: '5', fillVolume: '200', target: '8' }
  const read = readBench(known, 'metric', null)
  expect(read.missing).toEqual([])
  expect(sumpToPour(read, recipeBench(read, shop))).toBeNull()
})

test.each([
  ['target', { strongest: '7.5' }, 'at most the strongest mix poured, 7.5 %'],
  ['target', { high: '7' }, 'at most the upper end of the band, 7 %'],
  ['low', { low: '9' }, 'at most the target, 8 %'],
  ['leanest', { leanest: '9' }, 'at most the target, 8 %'],
  ['fillVolume', { fillVolume: '250' }, 'at most the brim, 240 L'],
  ['minVolume', { minVolume: '201' }, 'at most the full mark, 200 L'],
  ['volume', { volume: '260' }, 'at most a little above the brim, 252 L'],
] as const)('what two figures cannot both be is said at %s: %j', (key, change, expected) => {
  const texts = { ...benchTexts(mill, 'metric'), ...change }
  expect(readBench(texts, 'metric', mill).faults[key]?.expected).toBe(expected)
})

test('a figure at the edge of another is no fault', () => {
  const texts = { ...benchTexts(mill, 'metric'), target: '10', minVolume: '200', fillVolume: '200' }
  expect(readBench(texts, 'metric', mill).faults).toEqual({})
})

// 4.1 × 1.6 = 6.56 %; a step of 0.2 °Brix leaves 1.645 × 1.6 × 0.2 / √12 = 0.15 %.
test('a refractometer reading gives the strength and what it may be off', () => {
  expect(strengthTexts(4.1, bench)).toEqual({ concentration: '6.56', concentrationGive: '0.15' })
  expect(strengthTexts(4.1, { ...bench, brixFactor: null })).toBeNull()
  expect(
    strengthTexts(12, {
      ...bench,
      brixChart: [
        [0, 0],
        [10, 20],
      ],
    }),
  ).toBeNull()
  expect(strengthTexts(90, bench)).toBeNull()
})
