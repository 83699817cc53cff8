import { learn, speakAs } from '@sumpbook/fluid'
import { expect, onTestFinished, test } from 'vitest'
import { catalogue } from '../words/de.ts'
import {
  readBrix,
  readConductivity,
  readDissolved,
  readHardness,
  readLitres,
  readPercent,
  readPh,
  readPlain,
  readStrength,
  readTemperature,
  withUnit,
} from './read.ts'

test('a volume is read with comma and with point', () => {
  expect(readLitres('7,5', 'metric')).toEqual({ value: 7.5 })
  expect(readLitres('7.5', 'metric')).toEqual({ value: 7.5 })
})

test('a volume in the shop’s gallons becomes litres: 231 cubic inches, or 4.54609 L', () => {
  // 10 × 231 × 2.54³ cm³ = 37.85411784 L
  expect(readLitres('10', 'us')).toEqual({ value: expect.closeTo(37.85411784, 10) })
  expect(readLitres('10', 'imperial')).toEqual({ value: expect.closeTo(45.4609, 10) })
})

test('a unit typed behind the number wins over the field’s', () => {
  expect(readLitres('60 L', 'us')).toEqual({ value: 60 })
})

test('nothing typed is not zero', () => {
  expect(readLitres('  ', 'metric')).toEqual({ value: null })
  expect(readStrength('')).toEqual({ value: null })
})

test('a figure that can be read two ways is asked about, not guessed', () => {
  const read = readLitres('1,250', 'metric')
  expect(read).toMatchObject({ fault: { found: expect.stringContaining('1,250') } })
})

test('a negative volume and text that is no number are faults that say what was found and expected', () => {
  expect(readLitres('-3', 'metric')).toEqual({ fault: { found: '-3', expected: 'at least 0' } })
  expect(readLitres('abc', 'metric')).toEqual({
    fault: { found: '"abc"', expected: expect.stringContaining('a volume') },
  })
  expect(readPlain('NaN')).toMatchObject({ fault: { found: '"NaN"' } })
})

test('a strength may be a percentage or a ratio, whose conventions differ', () => {
  expect(readStrength('18 %')).toEqual({ value: 18 })
  expect(readStrength('5')).toEqual({ value: 5 })
  // 1 part to 20 parts water: 1/21. 1 in 20 parts of mix: 1/20.
  expect(readStrength('1:20')).toEqual({ value: expect.closeTo(100 / 21, 12) })
  expect(readStrength('1 in 20')).toEqual({ value: 5 })
})

test('a percentage lies between 0 and 100, both included', () => {
  expect(readPercent('0')).toEqual({ value: 0 })
  expect(readPercent('100')).toEqual({ value: 100 })
  expect(readPercent('100.1')).toEqual({ fault: { found: '100.1', expected: 'at least 0 and at most 100' } })
})

test('what was typed is kept with the unit of its field', () => {
  expect(withUnit(' 7,5 ', 'L')).toBe('7,5 L')
  expect(withUnit('60 gal', 'L')).toBe('60 gal')
})

test('what a water holds is read in the units of its report', () => {
  // 1 °dH is 17.848 ppm, 1 gpg 17.118 ppm.
  expect(readHardness('14 °dH')).toEqual({ value: expect.closeTo(249.87, 1) })
  expect(readHardness('15 gpg')).toEqual({ value: expect.closeTo(256.77, 1) })
  expect(readHardness('260')).toEqual({ value: 260 })
  expect(readHardness('-1')).toHaveProperty('fault')
  expect(readDissolved('32 mg/L')).toEqual({ value: 32 })
  expect(readConductivity('620 µS/cm')).toEqual({ value: 0.62 })
  expect(readConductivity('0,62')).toEqual({ value: 0.62 })
  expect(readPh('7,6')).toEqual({ value: 7.6 })
  expect(readPh('14.1')).toHaveProperty('fault')
})

test('°Brix beyond the scale are refused', () => {
  expect(readBrix('3,4')).toEqual({ value: 3.4 })
  expect(readBrix('95.1')).toEqual({ fault: { found: '95.1', expected: 'at least 0 and at most 95' } })
})

test('a temperature is read in the shop’s degrees, or those typed behind it', () => {
  expect(readTemperature('68', 'us')).toEqual({ value: expect.closeTo(20, 10) })
  expect(readTemperature('20', 'metric')).toEqual({ value: 20 })
  expect(readTemperature('20 °C', 'us')).toEqual({ value: 20 })
  expect(readTemperature('61', 'metric')).toHaveProperty('fault')
})

test('a fault is said in the language that is spoken, what was typed as it was typed', () => {
  learn('de', catalogue)
  speakAs(() => ({ language: 'de', numbers: 'de' }))
  onTestFinished(() => speakAs(() => ({ language: 'en', numbers: 'en' })))
  const texts = ['abc', '1,250', '1:20', '5 bar', '-3']
  const faults = texts.map((text) => readLitres(text, 'metric'))
  expect(faults).toEqual(
    [
      '"abc"',
      '"1,250", was als 1250 oder als 1.25 gelesen werden kann',
      'das Verhältnis "1:20"',
      'die Einheit "bar"',
      '-3',
    ].map((found) => ({ fault: { found, expected: expect.any(String) } })),
  )
  expect(readStrength('20:1')).toMatchObject({
    fault: { expected: expect.stringContaining('zuerst 1 Teil Konzentrat') },
  })
  expect(readPercent('120')).toEqual({ fault: { found: '120', expected: 'mindestens 0 und höchstens 100' } })
  expect(readPlain('x')).toMatchObject({ fault: { expected: 'eine Zahl wie 7,5 oder 7.5' } })
  const kinds = [
    readBrix('x'),
    readPh('x'),
    readHardness('x'),
    readDissolved('x'),
    readConductivity('x'),
    readTemperature('x', 'us'),
  ]
  // No English is left in what is expected.
  for (const read of kinds) expect(JSON.stringify(read)).not.toMatch(/such as|\ba \b|number| or /)
})
