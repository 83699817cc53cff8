import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readQuantity } from './read-quantity.ts'
import { type QuantityKind, unitWords } from './unit-words.ts'

test.each([
  ['7,5 %', 'percent', 7.5, '%'],
  ['7.5', 'percent', 7.5, '%'],
  ['3.4 °Brix', 'brix', 3.4, '°Brix'],
  ['3,4 Bx', 'brix', 3.4, '°Brix'],
  ['3.4', 'brix', 3.4, '°Brix'],
  ['60 US gal', 'volume', 60, 'us-gal'],
  ['60 U.S. gallons', 'volume', 60, 'us-gal'],
  ['12 imp. gal', 'volume', 12, 'imp-gal'],
  ['240 L', 'volume', 240, 'L'],
  ['240l', 'volume', 240, 'L'],
  ['240 ltr', 'volume', 240, 'L'],
  ['1,5 m³', 'volume', 1.5, 'm3'],
  ['500 ml', 'volume', 500, 'mL'],
  ['12.5 in', 'length', 12.5, 'in'],
  ['12,5"', 'length', 12.5, 'in'],
  ['12 ″', 'length', 12, 'in'],
  ["3'", 'length', 3, 'ft'],
  ['120 mm', 'length', 120, 'mm'],
  ['68 °F', 'temperature', 68, 'F'],
  ['-3,5 ºC', 'temperature', -3.5, 'C'],
  ['15 gpg', 'hardness', 15, 'gpg'],
  ['14 °dH', 'hardness', 14, 'dH'],
  ['250 mg/L', 'hardness', 250, 'ppm'],
  ['2,5 mmol/l', 'hardness', 2.5, 'mmol/L'],
  ['17 °e', 'hardness', 17, 'clark'],
  ['1:20', 'strength', 20, 'water-parts'],
  ['1 : 12,5', 'strength', 12.5, 'water-parts'],
  ['1 in 20', 'strength', 20, 'one-in'],
  ['5 %', 'strength', 5, '%'],
  ['pH 9,2', 'ph', 9.2, 'pH'],
  ['9.2', 'ph', 9.2, 'pH'],
  ['20 ppm', 'dissolved', 20, 'mg/L'],
  ['2400 µS/cm', 'conductivity', 2400, 'µS/cm'],
  ['2.4 mS/cm', 'conductivity', 2.4, 'mS/cm'],
  ['10^4 CFU/mL', 'count', 1e4, 'CFU/mL'],
  ['12', 'number', 12, '1'],
] as const)('%s as a %s', (text, kind, value, unit) => {
  expect(readQuantity(text, { kind })).toEqual({ value, unit })
})

test('without a unit, a quantity that has several keeps it open', () => {
  expect(readQuantity('240', { kind: 'volume' })).toEqual({ value: 240, unit: null })
  expect(readQuantity('5', { kind: 'strength' })).toEqual({ value: 5, unit: null })
})

test('the unit written at the field is meant where none is typed, and gives way to what is typed', () => {
  expect(readQuantity('240', { kind: 'volume', unit: 'L' })).toEqual({ value: 240, unit: 'L' })
  expect(readQuantity('240 us gal', { kind: 'volume', unit: 'L' })).toEqual({ value: 240, unit: 'us-gal' })
})

test('a gallon without a country is refused until it is known where one stands', () => {
  expect(readQuantity('60 gal', { kind: 'volume' })).toEqual({
    fault: 'found "gal", which is a US or an imperial gallon, expected a volume such as 60 L, 15 US gal or 12 imp gal',
  })
  expect(readQuantity('60 gal', { kind: 'volume', gallons: 'us' })).toEqual({ value: 60, unit: 'us-gal' })
  expect(readQuantity('60 gal', { kind: 'volume', gallons: 'imperial' })).toEqual({ value: 60, unit: 'imp-gal' })
  expect(readQuantity('3 qt', { kind: 'volume', gallons: 'us' })).toEqual({ value: 3, unit: 'us-qt' })
  expect(readQuantity('3 qt', { kind: 'volume', gallons: 'imperial' })).toHaveProperty('fault')
})

test('what can be read two ways is a fault unless the decimal sign is known', () => {
  expect(readQuantity('1,234 L', { kind: 'volume' })).toEqual({ fault: expect.stringContaining('1234 or as 1.234') })
  expect(readQuantity('1,234 L', { kind: 'volume', decimal: '.' })).toEqual({ value: 1234, unit: 'L' })
  expect(readQuantity('1,234 L', { kind: 'volume', decimal: ',' })).toEqual({ value: 1.234, unit: 'L' })
})

test('a percentage above 100 is no possible reading', () => {
  expect(readQuantity('7,125 %', { kind: 'percent' })).toEqual({ value: 7.125, unit: '%' })
})

test.each([
  ['', 'percent', 'found nothing, expected a percentage such as 7.5 %'],
  ['NaN', 'percent', 'found "NaN", expected a percentage'],
  ['high', 'ph', 'found "high", expected a pH'],
  ['3.4 Brix', 'percent', 'found the unit "Brix", expected a percentage'],
  ['6 %', 'brix', 'found the unit "%", expected a refractometer reading'],
  ['60 furlongs', 'volume', 'found the unit "furlongs", expected a volume'],
  ['60 constructor', 'volume', 'found the unit "constructor"'],
  ['1:20', 'volume', 'found the ratio "1:20", expected a volume'],
  ['20:1', 'strength', 'expected 1 part concentrate first'],
  ['1:1,234', 'strength', 'can be read as'],
  ['60 gal', 'hardness', 'found the unit "gal", expected a hardness'],
  ['12 1/2 in', 'length', 'found "12 1"'],
  ['<10 mg/L', 'dissolved', 'found "<10 mg/L"'],
  ['12 kg', 'number', 'found the unit "kg", expected a number'],
] as const)('"%s" as a %s is a fault that says what was found and expected', (text, kind, fault) => {
  expect(readQuantity(text, { kind })).toEqual({ fault: expect.stringContaining(fault) })
})

test('every unit is read in each of its spellings', () => {
  for (const [kind, { words }] of Object.entries(unitWords)) {
    for (const [word, unit] of Object.entries(words)) {
      expect(readQuantity(`3.5 ${word}`, { kind: kind as QuantityKind })).toEqual({ value: 3.5, unit })
    }
  }
})

test('nothing that is typed makes it throw, and a value is always finite', () => {
  const kinds = Object.keys(unitWords) as QuantityKind[]
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.constantFrom(...kinds), (text, kind) => {
      const read = readQuantity(text, { kind })
      if ('value' in read) expect(read.value).toSatisfy(Number.isFinite)
      else expect(read.fault).toContain('found')
    }),
    { numRuns: 10_000 },
  )
})
