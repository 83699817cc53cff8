import { treatment } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { readTreatment, type TreatmentTexts } from './treatment-texts.ts'

const texts = (more: Partial<TreatmentTexts> = {}): TreatmentTexts => ({
  demand: '150',
  peak: '',
  hardness: '260',
  tds: '',
  waterPrice: '0.004',
  makes: '300',
  price: '2400',
  recovery: '50',
  rejection: '95',
  upkeep: '300',
  resin: '',
  capacity: '',
  resinPrice: '',
  saving: '1800',
  years: '',
  ...more,
})

// 150 L more feed a day for 365 days at 0.004 are 219 a year, with 300 of upkeep 519; 2400 / (1800 − 519) = 1.8735 years.
test('percents become shares, what is left empty its usual value, and the payback follows', () => {
  const { question, missing } = readTreatment(texts(), 'metric')
  expect(missing).toEqual([])
  expect(question).toMatchObject({ peak: 1.5, years: 5, polisher: null, unit: { recovery: 0.5, rejection: 0.95 } })
  expect(treatment(question!).paybackYears).toBeCloseTo(1.87354, 4)
})

test('a price by the gallon is reckoned by the litre', () => {
  expect(readTreatment(texts({ waterPrice: '0.0378541' }), 'us').question?.tap.costPerLitre).toBeCloseTo(0.01, 6)
})

test('a part of the plant is all there, or not at all', () => {
  expect(readTreatment(texts({ rejection: '' }), 'metric').missing).toEqual(['its rejection'])
  expect(readTreatment(texts({ resin: '10' }), 'metric').missing).toEqual([
    'the resin’s capacity',
    'the price of a filling',
  ])
  const bare = texts({ makes: '', price: '', recovery: '', rejection: '' })
  expect(readTreatment(bare, 'metric').missing).toEqual(['a unit or resin'])
  const resin = readTreatment({ ...bare, resin: '10', capacity: '20', resinPrice: '90' }, 'metric')
  expect(resin.question).toMatchObject({ unit: null, polisher: { resinLitres: 10, capacityPerLitre: 20, price: 90 } })
})

test('a recovery of nothing is a fault', () => {
  expect(readTreatment(texts({ recovery: '0' }), 'metric').faults.recovery).toEqual({
    found: '0',
    expected: 'above 0 and at most 100',
  })
})
