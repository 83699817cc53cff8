import { expect, test } from 'vitest'
import { readSmall, type SmallTexts } from '../stock/form-fields.ts'
import { type AdditiveThing, additiveFields, additiveFrom, additiveTexts, labelFault } from './additive-texts.ts'

const biocide: AdditiveThing = {
  id: 'b3',
  name: 'Biocide 3',
  kind: 'biocide',
  dose: { low: 0.1, high: 0.2, unit: '%' },
  minimumDays: 7,
  most: { amount: 0.4, days: 28 },
  label: 'label of 2025, table 2',
  contains: ['nitrite', 'amines'],
  who: 'owner',
}
const valuesOf = (texts: SmallTexts) => {
  const read = readSmall(texts, additiveFields(), 'metric')
  if ('faults' in read) throw new Error(JSON.stringify(read.faults))
  return read.values
}

test('a label that is shown in the form comes out of it as it was', () => {
  expect(additiveFrom(valuesOf(additiveTexts(biocide)), 'b3')).toEqual(biocide)
})

test('what is not typed is not there: nothing is assumed of a label', () => {
  const texts = { ...additiveTexts(null), name: 'Defoamer', kind: 'defoamer' }
  expect(additiveFrom(valuesOf(texts), 'd')).toEqual({ id: 'd', name: 'Defoamer', kind: 'defoamer' })
})

test.each([
  [{ high: '' }, 'both, or neither'],
  [{ low: '0.3' }, 'not below the least'],
  [{ mostDays: '' }, 'the amount and the days'],
  [{ low: '', high: '' }, 'the dose of its label too'],
  [{ mostAmount: '0.1' }, 'no less than one dose'],
])('%o is said to be wrong', (texts, words) => {
  expect(labelFault(valuesOf({ ...additiveTexts(biocide), ...texts }))).toContain(words)
})

test('a whole label has no fault', () => {
  expect(labelFault(valuesOf(additiveTexts(biocide)))).toBeNull()
})
