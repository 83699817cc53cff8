import { expect, test } from 'vitest'
import { type DoseQuestion, dose, overLabel } from './dose.ts'
import { doseFault, measuredUnit } from './measured-amount.ts'
import { perLitre } from './per-litre.ts'

const label = { low: 1, high: 2, minimumDays: 7, most: null }
const volume = { mean: 220, low90: 200, high90: 250 }
const asked = (more: Partial<DoseQuestion> = {}): DoseQuestion => ({
  label,
  volume,
  given: [],
  isFallUnexplained: false,
  isNitriteWithAmines: false,
  inDoubt: false,
  ...more,
})

// 1 to 2 mL in each of 200 L; 400 mL in 250 L are 1.6 mL in a litre.
test('a dose is made for the low end of the volume', () => {
  expect(dose(asked())).toEqual({
    outcome: 'dose',
    least: 200,
    most: 400,
    volume: 200,
    thinnest: 1.6,
    already: 0,
  })
})

test.each([
  [{ low: null }, 'dose'],
  [{ high: null }, 'dose'],
] as const)('without the limits of the label there is no dose: %o', (missing, what) => {
  expect(dose(asked({ label: { ...label, ...missing } }))).toEqual({ outcome: 'label-missing', missing: what })
})

test('where something went in before, the days of the label are needed too', () => {
  const given = [{ daysAgo: 40, amount: 200 }]
  expect(dose(asked({ label: { ...label, minimumDays: null }, given }))).toEqual({
    outcome: 'label-missing',
    missing: 'interval',
  })
  expect(dose(asked({ label: { ...label, minimumDays: null } })).outcome).toBe('dose')
})

test.each([
  [6.9, 'too-soon'],
  [7, 'dose'],
  [7.1, 'dose'],
])('%f days after the last dose, with seven asked for: %s', (daysAgo, outcome) => {
  expect(dose(asked({ given: [{ daysAgo, amount: 100 }] })).outcome).toBe(outcome)
})

// At most 3 mL/L in 28 days is 600 mL in 200 L.
const most = { amount: 3, days: 28 }
test.each([
  [100, { outcome: 'dose', least: 200, most: 400 }],
  [300, { outcome: 'dose', least: 200, most: 300 }],
  [400, { outcome: 'dose', least: 200, most: 200 }],
  [401, { outcome: 'used-up', already: 401, inDays: 18 }],
])('of what the label allows in four weeks %i mL went in ten days ago', (amount, answer) => {
  expect(dose(asked({ label: { ...label, most }, given: [{ daysAgo: 10, amount }] }))).toMatchObject(answer)
})

test('what went in before the label’s days counts no more', () => {
  const given = [
    { daysAgo: 28, amount: 500 },
    { daysAgo: 27.9, amount: 250 },
  ]
  expect(dose(asked({ label: { ...label, most }, given }))).toMatchObject({ already: 250, most: 350 })
})

test('an amount that nobody measured leaves nothing that can be told', () => {
  const given = [{ daysAgo: 10, amount: null }]
  expect(dose(asked({ label: { ...label, most }, given }))).toEqual({ outcome: 'unmeasured', inDays: 18 })
})

test('what stands against every dose is said before the label is looked at', () => {
  const bare = { label: { low: null, high: null, minimumDays: null, most: null } }
  expect(dose(asked({ ...bare, isNitriteWithAmines: true, isFallUnexplained: true })).outcome).toBe(
    'nitrite-with-amines',
  )
  expect(dose(asked({ ...bare, isFallUnexplained: true })).outcome).toBe('cause-first')
})

test('without a volume, and while a record is in doubt, there is no dose', () => {
  expect(dose(asked({ volume: null })).outcome).toBe('volume-unknown')
  expect(dose(asked({ volume: { mean: 5, low90: 0, high90: 20 } })).outcome).toBe('volume-unknown')
  expect(dose(asked({ inDoubt: true })).outcome).toBe('doubt')
})

test('whatever is asked, a dose lies within the label for the volume it is made for', () => {
  for (const low of [0.5, 1, 2]) {
    for (const size of [3, 47, 900]) {
      for (const before of [0, 0.4, 1.3, 2.9]) {
        const answer = dose(
          asked({
            label: { low, high: 2, minimumDays: null, most },
            volume: { mean: size, low90: size, high90: 1.3 * size },
            given: before === 0 ? [] : [{ daysAgo: 3, amount: before * size }],
          }),
        )
        if (answer.outcome !== 'dose') continue
        expect(answer.most).toBeLessThanOrEqual(2 * size * (1 + 1e-12))
        expect(answer.most + answer.already).toBeLessThanOrEqual(3 * size * (1 + 1e-12))
        expect(answer.least).toBeLessThanOrEqual(answer.most * (1 + 1e-12))
      }
    }
  }
})

test('limits in the wrong order are refused by name', () => {
  expect(() => dose(asked({ label: { ...label, low: 3 } }))).toThrow('high is 2')
  expect(() => dose(asked({ label: { ...label, most: { amount: 1, days: 7 } } }))).toThrow('most is 1')
  expect(() => dose(asked({ given: [{ daysAgo: -1, amount: 1 }] }))).toThrow('daysAgo is -1')
})

// 500 mL in 220 L are 2.27 mL in a litre, 440 mL are 2.
test.each([
  [500, [], { kind: 'over-most', perLitre: 500 / 220, allowed: 2 }],
  [440, [], null],
  [400, [{ daysBefore: 3, amount: 10 }], { kind: 'too-soon', daysBefore: 3, minimumDays: 7 }],
  [400, [{ daysBefore: 8, amount: 300 }], { kind: 'over-total', perLitre: 700 / 220, allowed: 3, days: 28 }],
  [400, [{ daysBefore: 29, amount: 300 }], null],
  [null, [], null],
])('%s mL after %o against the label', (amount, before, over) => {
  expect(overLabel({ amount, volume: 220 }, before, { ...label, most })).toEqual(over)
})

test('labels are read in their own units', () => {
  expect(perLitre(0.2, '%')).toEqual({ amount: 2, unit: 'mL' })
  expect(perLitre(1500, 'mg/L')).toEqual({ amount: 1.5, unit: 'g' })
  expect(() => perLitre(-1, '%')).toThrow('amount is -1')
})

test.each([
  [199, 'under'],
  [200, null],
  [400, null],
  [400.001, 'over'],
])('%f mL against a dose of 200 to 400 is %s', (amount, fault) => {
  expect(doseFault(amount, { least: 200, most: 400 })).toBe(fault)
})

// 128 US fluid ounces are 3.785411784 L, 160 imperial ones 4.54609 L, an ounce is 28.349523125 g.
test('small amounts are measured in the shop’s own units', () => {
  expect(128 * measuredUnit('mL', 'us').size).toBeCloseTo(3785.411784, 9)
  expect(160 * measuredUnit('mL', 'imperial').size).toBeCloseTo(4546.09, 9)
  expect(measuredUnit('g', 'us')).toEqual({ word: 'oz', size: 28.349523125 })
  expect(measuredUnit('g', 'metric')).toEqual({ word: 'g', size: 1 })
})
