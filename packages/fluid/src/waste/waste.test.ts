import { expect, test } from 'vitest'
import { codeCautions, plainCode, wasteCodes } from './codes.ts'
import { litresOfMass, massOfLitres } from './mass.ts'
import { reconciled } from './reconcile.ts'
import { termProposals } from './terms.ts'

test.each([
  ['120109*', '12 01 09*'],
  ['12.01.09 *', '12 01 09*'],
  [' 12 01 09* ', '12 01 09*'],
  ['12 01 17', '12 01 17'],
  ['D001', 'D001'],
])('"%s" is written %s', (typed, plain) => {
  expect(plainCode(typed)).toBe(plain)
})

test('a water-mixed waste under the code of synthetic oils is questioned, oil under it is not', () => {
  expect(codeCautions({ kind: 'emulsion', code: '120110*', isUs: false })).toContain('wasteSyntheticCode')
  expect(codeCautions({ kind: 'rinse', code: '12 01 10', isUs: false })).toContain('wasteSyntheticCode')
  expect(codeCautions({ kind: 'oil', code: '12 01 10*', isUs: false })).not.toContain('wasteSyntheticCode')
  expect(codeCautions({ kind: 'emulsion', code: '12 01 09*', isUs: false })).not.toContain('wasteSyntheticCode')
})

test('where no code was chosen that is said, and none is chosen for the shop', () => {
  expect(codeCautions({ kind: 'emulsion', code: null, isUs: false })).toContain('wasteCodeOpen')
  expect(codeCautions({ kind: 'emulsion', code: '12 01 09*', isUs: false })).not.toContain('wasteCodeOpen')
})

test('halogens are spoken of in the United States, for oil and emulsion', () => {
  expect(codeCautions({ kind: 'oil', code: 'x', isUs: true })).toContain('wasteHalogens')
  expect(codeCautions({ kind: 'sludge', code: 'x', isUs: true })).not.toContain('wasteHalogens')
  expect(codeCautions({ kind: 'oil', code: 'x', isUs: false })).not.toContain('wasteHalogens')
})

test('every code and every term that is offered has its source', () => {
  expect(wasteCodes.every(({ list }) => list.length > 10)).toBe(true)
  expect(termProposals.every(({ source, count }) => source.length > 10 && count > 0)).toBe(true)
})

test('both sides of the tolerance', () => {
  expect(reconciled({ given: 0, stored: 0 })).toEqual({ outcome: 'nothing' })
  expect(reconciled({ given: 100, stored: 80 })).toEqual({ outcome: 'agrees' })
  expect(reconciled({ given: 100, stored: 79 })).toEqual({ outcome: 'lost', litres: 21 })
  expect(reconciled({ given: 1000, stored: 900 })).toEqual({ outcome: 'agrees' })
  expect(reconciled({ given: 1000, stored: 899 })).toEqual({ outcome: 'lost', litres: 101 })
  expect(reconciled({ given: 79, stored: 100 })).toEqual({ outcome: 'gained', litres: 21 })
})

test('a mass and its litres lead to each other; a density that is none is refused', () => {
  expect(litresOfMass(massOfLitres(345, 1.6), 1.6)).toBeCloseTo(345, 10)
  expect(() => litresOfMass(1, 0)).toThrow('density is 0')
  expect(() => litresOfMass(-1, 1)).toThrow('kilograms is -1')
  expect(() => massOfLitres(-1, 1)).toThrow('litres is -1')
  expect(() => reconciled({ given: Number.NaN, stored: 0 })).toThrow('given is NaN')
})
