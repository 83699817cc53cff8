import { expect, test } from 'vitest'
import { parallelPlan } from './parallel.ts'
import { type CleanoutSheet, cleanoutSheet, type SheetAsked } from './sheet.ts'
import { stretchesOf } from './stretches.ts'

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
const ids = ({ steps }: Extract<CleanoutSheet, { outcome: 'sheet' }>) => steps.map(({ id }) => id)
const cautionsAt = (sheet: Extract<CleanoutSheet, { outcome: 'sheet' }>, id: string) =>
  sheet.steps.find((step) => step.id === id)!.cautions

test('oil comes off first, chips are out before the cleaner, the slide comes last', () => {
  expect(ids(sheetOf())).toEqual([
    'ready',
    'skim',
    'lock-out',
    'drain',
    'sludge',
    'cleaner',
    'cleaner-drain',
    'rinse-1',
    'rinse-check',
    'charge',
    'first-readings',
    'later-slide',
  ])
})

test('every rinse is a step of its own', () => {
  expect(ids(sheetOf({ rinses: 2 })).filter((id) => id.startsWith('rinse'))).toEqual([
    'rinse-1',
    'rinse-2',
    'rinse-check',
  ])
  expect(ids(sheetOf({ rinses: 0 })).filter((id) => id.startsWith('rinse-'))).toEqual(['rinse-check'])
})

test('another fluid asks for its suppliers’ word, the heel out and another label', () => {
  const changeOver = { outcome: 'never-meet', because: ['nitrite-and-amines'] } as const
  const sheet = sheetOf({ changeOver: { ...changeOver, because: [...changeOver.because] } })
  expect(ids(sheet)).toEqual(expect.arrayContaining(['supplier-word', 'heel-out', 'label']))
  expect(cautionsAt(sheet, 'supplier-word')).toEqual(['nitriteWithAmines'])
  expect(ids(sheetOf({ changeOver: { outcome: 'same-product' } }))).toEqual(ids(sheetOf()))
})

test('hydrogen is named where aluminium or magnesium is cut or nobody said what is, before the cleaner', () => {
  expect(cautionsAt(sheetOf(), 'sludge')).toContain('alkalineOnFines')
  expect(cautionsAt(sheetOf({ metals: ['Aluminium 6082'] }), 'sludge')).toContain('alkalineOnFines')
  expect(cautionsAt(sheetOf({ metals: ['steel'] }), 'sludge')).not.toContain('alkalineOnFines')
  expect(cautionsAt(sheetOf({ metals: ['magnesium'] }), 'sludge')).toContain('magnesiumHydrogen')
})

test('what nobody looked at is taken as it may be at worst', () => {
  expect(cautionsAt(sheetOf(), 'skim')).toContain('rottenEggGas')
  expect(cautionsAt(sheetOf(), 'cleaner')).toContain('endotoxin')
  expect(cautionsAt(sheetOf({ foul: false }), 'cleaner')).not.toContain('endotoxin')
  expect(cautionsAt(sheetOf(), 'cleaner')).toContain('acidOrBleach')
})

test('a sump that somebody could get into is a confined space', () => {
  expect(cautionsAt(sheetOf({ enterable: true }), 'lock-out')).toContain('confinedSpace')
  expect(cautionsAt(sheetOf(), 'lock-out')).not.toContain('confinedSpace')
})

test('the machine stands for the cleaner too, but nobody stands by', () => {
  const sheet = sheetOf()
  const cleaner = sheet.steps.find(({ id }) => id === 'cleaner')!
  expect(sheet.downtimeHours - sheet.labourHours).toBeCloseTo(cleaner.hours, 10)
  expect(sheetOf({ hours: 6 }).downtimeHours - sheet.downtimeHours).toBeCloseTo(2, 10)
})

test('hours below 0 are refused', () => {
  expect(() => cleanoutSheet({ ...asked, hours: -1 })).toThrow('hours is -1')
  expect(() => cleanoutSheet({ ...asked, fillPerHour: 0 })).toThrow('fillPerHour is 0')
})

test('a sheet’s stretches last as long as its machine stands', () => {
  const sheet = sheetOf()
  const { stretches } = stretchesOf('s1', sheet)
  expect(stretches.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(sheet.downtimeHours, 10)
  expect(stretches.find(({ name }) => name === 'cleaner')!.needs).toEqual({})
  const plan = parallelPlan({ jobs: [stretchesOf('s1', sheet)], capacity: { person: 1, 'pump-out': 1 } })
  expect(plan.finish).toBeCloseTo(sheet.downtimeHours, 10)
})
