import { expect, test } from 'vitest'
import { canonicalUnit, unitNamed, unitNames } from './units.ts'

test.each([
  ['US gal', 'volume', 1, 3.785411784],
  ['imperial gal', 'volume', 1, 4.54609],
  ['mL', 'volume', 500, 0.5],
  ['in', 'length', 1, 25.4],
  ['cm', 'length', 12, 120],
  ['µS/cm', 'conductivity', 2400, 2.4],
  ['g/L', 'mass', 0.5, 500],
  ['fraction of 1', 'percent', 0.08, 8],
  // 68 °F are 20 °C: (68 − 32) / 1.8.
  ['°F', 'temperature', 68, 20],
  // A grain of 64.79891 mg in 3.785411784 L: 17.118 mg/L.
  ['gpg', 'hardness', 1, 17.11806],
  // 10 mg of CaO are 10 × 100.086 / 56.077 = 17.848 mg of CaCO3.
  ['°dH', 'hardness', 1, 17.848],
] as const)('%s of %s', (name, dimension, value, expected) => {
  const unit = unitNamed(name, [dimension], 'metric')
  expect(unit).not.toBeNull()
  expect((unit as { canonical(value: number): number }).canonical(value)).toBeCloseTo(expected, 3)
})

test('ppm is a hardness or a mass, as the column is', () => {
  expect(unitNamed('ppm', ['hardness'], 'us')).toMatchObject({ name: 'ppm' })
  expect(unitNamed('ppm', ['mass'], 'us')).toMatchObject({ name: 'mg/L' })
  expect(unitNamed('ppm', ['volume'], 'us')).toBeNull()
})

test('every unit is found again by the name it is offered under', () => {
  for (const dimension of ['volume', 'length', 'hardness', 'mass', 'conductivity', 'temperature', 'percent'] as const) {
    expect(unitNames([dimension]).map((name) => unitNamed(name, [dimension], 'metric'))).toEqual(
      unitNames([dimension]).map((name) => expect.objectContaining({ name })),
    )
    expect(canonicalUnit(dimension).canonical(7)).toBe(7)
  }
})
