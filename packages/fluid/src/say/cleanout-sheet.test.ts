import { expect, test } from 'vitest'
import { cleanoutSheet, type SheetAsked } from '../cleanout/sheet.ts'
import {
  type SheetContext,
  sayChangeOver,
  sayCleanout,
  sayCleanoutStep,
  sayHours,
  sayRinseFaults,
} from './cleanout-sheet.ts'

const asked: SheetAsked = {
  volume: 200,
  heldBack: 10,
  cleanerPercent: 2,
  rinsePercent: 2,
  rinseFraction: 0.4,
  rinses: 1,
  target: 8,
  hours: 4,
  solids: null,
  metals: null,
  enterable: false,
  foul: null,
  changeOver: null,
}
const sheetOf = (more: Partial<SheetAsked> = {}) => {
  const sheet = cleanoutSheet({ ...asked, ...more })
  if (sheet.outcome !== 'sheet') throw new Error(sheet.outcome)
  return sheet
}
const wordsAt = (id: string, context: Partial<SheetContext> = {}, more: Partial<SheetAsked> = {}) => {
  const sheet = sheetOf(more)
  return sayCleanoutStep(sheet.steps.find((step) => step.id === id)!, sheet, { units: 'metric', ...context })
}

test('a filling is said as water first and concentrate into it, by their names', () => {
  const { text } = wordsAt('charge', { fluid: 'Semi 1', water: 'tap water' })
  expect(text).toMatch(/^190 L at 8\.3 %: 174 L of tap water, then 15\.8 L of Semi 1 into it\./)
  expect(text).toContain('the whole then stands at 8.0 %')
})

test('a small filling is said in buckets, a large one is not', () => {
  const container = { name: 'Bucket', capacity: 12, graduation: 1 }
  expect(wordsAt('rinse-1', { container }).text).toContain(
    'In buckets of 12 L: 6 full and 6 L of water, 2 L of concentrate last.',
  )
  expect(wordsAt('charge', { container }, { volume: 2000 }).text).not.toContain('buckets')
})

test('what arithmetic leaves is told, and that it accepts nothing', () => {
  const { text } = wordsAt('rinse-check')
  expect(text).toContain('0.56 % of the old fluid’s strength and 0.21 % of cleaner')
  expect(text).toContain('That alone accepts nothing')
  expect(text).toContain('more than 0.5 above')
  expect(wordsAt('rinse-check', { locale: 'de-DE' }).text).toContain('more than 0,5 above')
})

test('litres are said in the reader’s unit', () => {
  expect(wordsAt('drain', { units: 'us' }).text).toMatch(/^50\.2 gal come out\./)
})

test('the second rinse is called so', () => {
  expect(wordsAt('rinse-2', {}, { rinses: 2 }).title).toBe('Rinse with weak fluid, again')
})

test('hours are minutes below one hour', () => {
  expect([sayHours(0), sayHours(0.01), sayHours(0.5), sayHours(1.26), sayHours(4)]).toEqual([
    '0 minutes',
    '5 minutes',
    '30 minutes',
    '1.3 h',
    '4 h',
  ])
})

test('the whole is one sentence', () => {
  expect(sayCleanout(sheetOf(), { units: 'metric' })).toMatch(
    /^12 steps with 1 rinse: the machine stands for about \d\.\d h, somebody stands by for \d\.\d h, and 460 L become waste\.$/,
  )
})

test('two fluids that must not meet are said so first', () => {
  expect(sayChangeOver({ outcome: 'never-meet', because: ['oil-and-water'] })[0]).toMatch(/must not meet/)
  expect(sayChangeOver({ outcome: 'supplier-first', because: ['contents-unknown'] })[0]).toMatch(/suppliers/)
  expect(sayChangeOver({ outcome: 'same-product' })).toHaveLength(1)
})

test('a rinse that is not accepted says why and what next', () => {
  expect(sayRinseFaults(['still-smells'])).toEqual(['It smells.', 'Rinse again before anything fresh goes in.'])
})
