import { expect, test } from 'vitest'
import { readHeading } from './headings.ts'

test.each([
  // English
  ['Date', 'at', null],
  ['Date / Time', 'at', null],
  ['Time', 'time', null],
  ['Machine #', 'sump', null],
  ['Brix', 'brix', '°Brix?'],
  ['Brix %', 'brix', '°Brix?'],
  ['Brix (refractometer)', 'brix', '°Brix?'],
  ['Refractometer reading', 'brix', '°Brix?'],
  ['pH', 'ph', 'pH?'],
  ['pH (strip)', 'ph', 'pH?'],
  ['Level (gal)', 'volume', 'US gal'],
  ['Level (in)', 'level', 'in'],
  ['Level in mm', 'level', 'mm'],
  ['Sump level', 'level', null],
  ['Vol [L]', 'volume', 'L'],
  ['Hardness, gpg', 'hardness', 'gpg'],
  ['Hardness / ppm', 'hardness', 'ppm'],
  ['Total hardness (mg/L CaCO3)', 'hardness', 'ppm'],
  ['Concentrate added (gal)', 'addedConcentrate', 'US gal'],
  ['Concentrate (gal)', 'addedConcentrate', 'US gal'],
  ['Water added gal', 'addedWater', 'US gal'],
  ['Water (gal)', 'addedWater', 'US gal'],
  ['Water', 'water', null],
  ['Added', 'added', null],
  ['Gallons added', 'added', 'US gal'],
  ['Added strength %', 'addedStrength', '%'],
  ['Added %', 'addedStrength', '%'],
  ['Conductivity (µS/cm)', 'conductivity', 'µS/cm'],
  ['Temp °F', 'temperature', '°F'],
  ['CFU/mL', 'bacteria', 'CFU/mL?'],
  ['Tramp oil %', 'trampOil', '%'],
  ['Nitrite (mg/L)', 'nitrite', 'mg/L'],
  ['Operator', 'by', null],
  ['Notes', 'note', null],
  // German
  ['Datum', 'at', null],
  ['Maschine', 'sump', null],
  ['Füllstand L', 'volume', 'L'],
  ['Härte °dH', 'hardness', '°dH'],
  ['Gesamthärte [°dH]', 'hardness', '°dH'],
  ['Leitfähigkeit (mS/cm)', 'conductivity', 'mS/cm'],
  ['Nachgefüllt (Liter)', 'added', 'L?'],
  ['Konzentrat zugegeben (L)', 'addedConcentrate', 'L'],
  ['Prüfer', 'by', null],
  ['pH-Wert', 'ph', 'pH?'],
  ['Bemerkung', 'note', null],
  // Spanish
  ['Fecha', 'at', null],
  ['Máquina', 'sump', null],
  ['Dureza (ppm)', 'hardness', 'ppm'],
  ['Nivel (L)', 'volume', 'L'],
  ['Operario', 'by', null],
  ['Agua añadida (L)', 'addedWater', 'L'],
])('"%s" is %s', (text, field, unit) => {
  const heading = readHeading(text, 'us')
  expect(heading.field).toBe(field)
  if (unit !== null && !unit.endsWith('?')) expect('unit' in heading && heading.unit?.name).toBe(unit)
  if (unit === null) expect(heading).toMatchObject({ unit: null })
})

test.each(['Shift', 'Tap water', 'Mill 7', 'Mill 7 Brix', '', 'Total'])('"%s" is not understood', (text) => {
  expect(readHeading(text, 'us')).toEqual({ field: null, reason: 'unknown' })
})

test.each(['Concentration', 'Conc. %', 'Konzentration (%)', 'Strength %', 'Concentrate %'])(
  '"%s" does not say how the concentration came about',
  (text) => {
    expect(readHeading(text, 'us')).toEqual({ field: null, reason: 'concentration' })
  },
)

test('a unit that is none is told and not passed over', () => {
  expect(readHeading('Level (furlongs)', 'us')).toMatchObject({
    field: 'level',
    trouble: 'unknown-unit',
    unitText: 'furlongs',
  })
  expect(readHeading('Hardness, drops', 'us')).toMatchObject({ field: 'hardness', trouble: 'unknown-unit' })
})

test("a gallon is the shop's own, and in a metric shop it is asked which", () => {
  expect(readHeading('Level (gal)', 'imperial')).toMatchObject({ unit: { name: 'imperial gal' } })
  expect(readHeading('Level (gal)', 'metric')).toMatchObject({ field: 'volume', unit: null, trouble: 'which-gallon' })
  expect(readHeading('Level (US gal)', 'metric')).toMatchObject({ unit: { name: 'US gal' } })
})

test('a heading can announce the order of its dates', () => {
  expect(readHeading('Date (mm/dd/yyyy)', 'us')).toMatchObject({ field: 'at', dateOrder: 'mdy' })
})
