import { expect, test } from 'vitest'
import { dispense } from '../recipe/containers.ts'
import type { Pourable, SumpToPour } from '../recipe/recipe.ts'
import { topUp } from '../recipe/top-up.ts'
import { pourWays } from '../recipe/ways.ts'
import { sayAlternative, sayRecipe, sayWay } from './recipe.ts'

const sump: SumpToPour = { volume: 162, concentration: 5.6, fillVolume: 200, target: 8, band: { low: 6, high: 10 } }
const context = { units: 'metric', fillVolume: 200, waterNames: { di: 'Deionised water' } } as const
const waters = [{ id: 'di', kind: 'deionised' as const }]
const say = (more: Partial<SumpToPour>, pourable: Pourable = {}) =>
  sayRecipe(topUp({ ...sump, ...more }, { waters, ...pourable }), context)

test('a pour is said with its water first, its concentrate after, and where it leads', () => {
  expect(say({})).toMatchObject({
    headline: 'Add 38 L at 18.2 %',
    how: '31.1 L of deionised water, then 6.9 L of concentrate into it.',
    outcome: 'It will then stand at 8.0 %, level at the mark.',
    because: ['Under its band.'],
  })
})

test('in buckets, with what the rounding makes of it', () => {
  const recipe = topUp(sump, { waters })
  const dispensed = dispense(recipe.add!, { name: 'bucket', capacity: 12, graduation: 1 })
  expect(sayRecipe(recipe, { ...context, dispensed }).how).toBe(
    '31.1 L of deionised water, then 6.9 L of concentrate into it. In 12 L buckets: 2 full and 7 L of water, 7 L concentrate last; as measured that is 18.4 %.',
  )
})

test('water alone is said as water alone', () => {
  expect(say({ concentration: 12, volume: 150 })).toMatchObject({
    headline: 'Pour 50 L of deionised water, no concentrate',
    how: '',
  })
})

test('the leanest mix allowed is named as such', () => {
  expect(say({ concentration: 12, volume: 150 }, { minStrength: 1 }).headline).toBe(
    'Add 50 L at 1 %, the leanest mix this fluid allows',
  )
})

test('what is drawn off is named first, and as waste', () => {
  const words = say({ volume: 200, concentration: 4 })
  expect(words.headline).toBe('Draw off 50 L, then add 50 L at 20 %')
  expect(words.outcome).toBe('It will then stand at 8.0 %, level at the mark. 50 L become waste.')
  expect(words.cautions.join(' ')).toContain('is waste')
})

test.each<[string, Partial<SumpToPour>, string]>([
  [
    'a change of the charge',
    { volume: 200, concentration: 1, target: 20, band: { low: 19, high: 21 } },
    'Change the charge: drain it, then fill 200 L at 20 %',
  ],
  ['nothing', { volume: 200, concentration: 8 }, 'Nothing to pour'],
  ['a straight oil', { class: 'straight-oil' }, 'No water and no mix into a straight oil'],
  ['a doubt', { doubt: true }, 'Read again before pouring'],
  ['a wide interval', { concentrationSd: 3 }, 'Measure the strength before pouring'],
  ['an unknown volume', { volumeSd: 200 }, 'Measure the level before pouring'],
  ['over the brim', { volume: 255, concentration: 8 }, 'Draw off 55 L'],
])('%s has its headline', (_, more, headline) => {
  expect(say(more).headline).toBe(headline)
})

test('cautions stand where the step is, and the standing line wherever something is done', () => {
  const standing = "Guidance only: the fluid's label and safety data sheet, the supplier and local rules come first."
  expect(say({}).cautions).toEqual([expect.stringContaining('never water into concentrate'), standing])
  expect(say({ volume: 200, concentration: 8 }).cautions).toEqual([])
  expect(say({ volume: 60, minVolume: 80 }).cautions[0]).toContain('Pumps that draw air')
  expect(say({ volume: 200, concentration: 1, target: 20, band: { low: 19, high: 21 } }).cautions.join(' ')).toContain(
    'Lock out',
  )
  expect(say({ target: 30, band: { low: 0, high: 50 } }, { maxStrength: 100 }).cautions.join(' ')).toContain(
    'Neat concentrate',
  )
})

test('another way says what follows from it', () => {
  const [other] = topUp({ ...sump, volume: 200, concentration: 4 }, { waters }).alternatives
  expect(sayAlternative(other!, context)).toBe(
    'Or, above the mark but under the brim: Add 50 L at 20 %. It will then stand at 7.2 %, with 250 L in it.',
  )
})

test('ways with what stands ready are said in one sentence each', () => {
  const [way] = pourWays(
    { ...sump, volume: 150, concentration: 6.5, target: 6, band: { low: 5, high: 7 } },
    { mixerStrengths: [4], leanest: 1 },
  )
  expect(sayWay(way!, context)).toBe('With what is ready: 50 L at 4 % from the mixer; then 5.9 %.')
})
