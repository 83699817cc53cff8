import { expect, test } from 'vitest'
import { readSmall, type SmallField } from './form-fields.ts'

const fields: SmallField[] = [
  { key: 'litres', label: 'Litres', kind: 'volume', required: true },
  { key: 'drums', label: 'Drums', kind: 'number', whole: true },
  { key: 'rest', label: 'Rest', kind: 'volume', least: 0 },
  { key: 'lot', label: 'Lot', kind: 'text' },
]

test('a form gives litres whatever the shop types in, and what was typed beside them', () => {
  const read = readSmall({ litres: '55', lot: ' B-4 ' }, fields, 'us')
  expect(read).toMatchObject({
    values: { texts: { lot: 'B-4' }, typed: { litres: '55 gal' }, numbers: { drums: null, rest: null } },
  })
  expect('values' in read && read.values.numbers.litres).toBeCloseTo(208.198, 3)
})

test('every fault stands at its field: nothing where something is needed, nought, a part of a drum', () => {
  const read = readSmall({ litres: '', drums: '1.5', rest: '-1' }, fields, 'metric')
  expect('faults' in read && Object.keys(read.faults)).toEqual(['litres', 'drums', 'rest'])
  expect(readSmall({ litres: '0' }, fields, 'metric')).toMatchObject({ faults: { litres: { found: '0' } } })
  expect(readSmall({ litres: '1', rest: '0' }, fields, 'metric')).toMatchObject({ values: { numbers: { rest: 0 } } })
})
