import { expect, test } from 'vitest'
import { advise } from './advise.ts'
import type { RecipeBench } from './bench.ts'

const bench: RecipeBench = {
  brixFactor: 1.6,
  brixChart: null,
  resolution: 0.2,
  fillVolume: 200,
  capacity: 240,
  minVolume: null,
  holdUp: 0,
  dipTable: null,
  target: 8,
  band: { low: 6, high: 10 },
  maxStrength: 20,
  minStrength: 0,
  class: 'semi-synthetic',
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
  container: null,
  measure: null,
}
const figure = (mean: number, sd = 0) => ({ mean, sd, low90: mean - 1.6449 * sd, high90: mean + 1.6449 * sd })
const known = { volume: figure(162), concentration: figure(5.6) }
const reader = { units: 'metric' } as const
const advised = (standing: Partial<typeof known> | Record<string, null>, more: Partial<RecipeBench> = {}) =>
  advise({ ...known, ...standing } as typeof known, { ...bench, ...more }, reader)

test('what is known becomes a recipe with its words', () => {
  const { recipe, words, dispensed } = advised({})
  expect(recipe).toMatchObject({ action: 'top-up', add: { volume: 38 } })
  expect(words.headline).toBe('Add 38 L at 18.2 %')
  expect(dispensed).toBeNull()
})

test('with a bucket and a jug the pour is measured out in them', () => {
  const container = { id: 'b', name: 'bucket', capacity: 12, graduation: 1 }
  expect(advised({}, { container }).dispensed).toMatchObject({ fullWater: 2, restWater: 7, concentrate: 7 })
  const measure = { id: 'j', name: 'jug', capacity: 1, graduation: 0.1 }
  expect(advised({}, { container, measure }).dispensed?.concentrate).toBeCloseTo(6.9, 10)
})

test.each<[string, Record<string, null>, Partial<RecipeBench>, string[]]>([
  ['the mark', {}, { fillVolume: null }, ['mark-unknown']],
  ['the target', {}, { target: null }, ['target-unknown']],
  ['the factor', { concentration: null }, { brixFactor: null }, ['factor-unknown']],
  ['a reading', { concentration: null }, {}, ['strength-unknown']],
  ['the level', { volume: null }, {}, ['level-unknown']],
  [
    'nearly everything',
    { volume: null, concentration: null },
    { fillVolume: null, target: null },
    ['mark-unknown', 'target-unknown', 'strength-unknown', 'level-unknown'],
  ],
])('where %s is missing it is asked for, and nothing is poured', (_, standing, more, because) => {
  const { recipe } = advised(standing, more)
  expect(recipe).toMatchObject({ action: 'measure-first', add: null, result: null, because })
})

test('a strength by titration needs no factor', () => {
  expect(advised({}, { brixFactor: null }).recipe.action).toBe('top-up')
})

// At 5.6 %: from 180 L to 200 the fill would want (1600 − 1008) / 20 = 29.6 %, held at 20: 7.04 %; from 160 L 17.6 %, from 140 L 13.6 %.
test('with only the level missing, what would be poured is shown for three levels', () => {
  expect(advised({ volume: null }).alternatives).toEqual([
    'With 180 L in it: Add 20 L at 20 %. It will then stand at 7.0 %, level at the mark.',
    'With 160 L in it: Add 40 L at 17.6 %. It will then stand at 8.0 %, level at the mark.',
    'With 140 L in it: Add 60 L at 13.6 %. It will then stand at 8.0 %, level at the mark.',
  ])
})

test('with the level missing and the strength known less well than its band is wide, both are to be measured', () => {
  // 2 × 1.645 × 1.3 = 4.28 is wider than 4.
  const { recipe, alternatives } = advised({ volume: null, concentration: figure(5.6, 1.3) } as never)
  expect(recipe.because).toEqual(['level-unknown', 'interval-wider-than-band'])
  expect(alternatives).toEqual([])
})

test('a straight oil is refused whatever is missing', () => {
  expect(advised({ volume: null, concentration: null }, { class: 'straight-oil', target: null }).recipe.action).toBe(
    'refuse',
  )
})

test('a volume that the records put above the brim is taken at the brim’s end, a target out of reach at the nearest', () => {
  expect(advised({ volume: figure(900), concentration: figure(8) }).recipe).toMatchObject({ action: 'draw-off' })
  expect(advised({}, { target: 25, band: { low: 6, high: 30 } }).recipe.add?.strength).toBe(20)
  expect(advised({}, { capacity: null, minVolume: 30, class: null, band: null }).recipe.action).toBe('top-up')
})

test('where the mixer is too weak for the band the nearest is poured, and said to fall short', () => {
  const { recipe, words } = advised({}, { maxStrength: 5 })
  // 162 L at 5.6 % and 38 L at 5 % are (907.2 + 190) / 200 = 5.486 %, under the band from 6 %.
  expect(recipe).toMatchObject({ action: 'top-up', add: { volume: 38, strength: 5 } })
  expect(recipe.result?.concentration).toBeCloseTo(5.486, 10)
  expect(recipe.because).toEqual(['lean', 'held-at-strongest', 'still-lean'])
  expect(words.because.join(' ')).toContain('After this fill it is still under its band')
})

test('a weak mixer thins a sump that is too rich all the same', () => {
  // 162 L at 9 % to 200 L at 8 %: (1600 − 1458) / 38 = 3.737 %, which a mixer of 5 % can pour.
  const { recipe } = advised({ concentration: figure(9) }, { maxStrength: 5 })
  expect(recipe.add?.strength).toBeCloseTo(3.737, 3)
  expect(recipe.result?.concentration).toBeCloseTo(8, 10)
})

test('where the leanest mix allowed is above the band it is poured, and said to fall short', () => {
  // 162 L at 12.5 % and 38 L at 11 % are (2025 + 418) / 200 = 12.215 %.
  const { recipe } = advised({ concentration: figure(12.5) }, { minStrength: 11 })
  expect(recipe.because).toEqual(['rich', 'held-at-leanest', 'still-rich'])
  expect(recipe.result?.concentration).toBeCloseTo(12.215, 10)
})

test('at the mark, outside a band that no pour reaches, nothing is drawn off for nothing', () => {
  const { recipe } = advised({ volume: figure(200) }, { maxStrength: 5 })
  expect(recipe).toMatchObject({ action: 'none', add: null, drawOff: 0, result: { concentration: 5.6 } })
  expect(recipe.because).toEqual(['lean', 'held-at-strongest', 'still-lean'])
})
