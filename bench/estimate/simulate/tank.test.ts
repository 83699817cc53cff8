import { expect, test } from 'vitest'
import { concentrationOf, emptyTank, hardnessOf, pass, pour, takeFrom, volumeOf } from './tank.ts'

const quiet = { depletion: 0, scum: 0, chips: 0 }
const filled = (volume: number, strength: number, hardness: number) => {
  const tank = emptyTank(1)
  pour(tank, { volume, strength, product: 0, hardness, salts: 0 })
  return tank
}

test('a pour brings its concentrate, and its water the minerals', () => {
  // 200 L at 8 %: 16 L concentrate, 184 L water of 250 mg/L: 46000 mg in 200 L = 230 mg/L.
  const tank = filled(200, 8, 250)
  expect(volumeOf(tank)).toBeCloseTo(200, 10)
  expect(concentrationOf(tank)).toBeCloseTo(8, 10)
  expect(hardnessOf(tank)).toBeCloseTo(230, 10)
})

test('evaporation takes water alone', () => {
  // 16 L concentrate in 160 L = 10 %; 46000 mg in 160 L = 287.5 mg/L.
  const tank = filled(200, 8, 250)
  pass(tank, { evaporated: 40, carried: 0, days: 1 }, quiet)
  expect(concentrationOf(tank)).toBeCloseTo(10, 10)
  expect(hardnessOf(tank)).toBeCloseTo(287.5, 10)
})

test('what is taken leaves the composition as it was', () => {
  const tank = filled(200, 8, 250)
  expect(volumeOf(takeFrom(tank, 50))).toBeCloseTo(50, 10)
  expect(volumeOf(tank)).toBeCloseTo(150, 10)
  expect(concentrationOf(tank)).toBeCloseTo(8, 10)
})

test('topped up all the time, a sump comes to the cycles of a cooling tower', () => {
  // Evaporation 6 and blow-down 2 L a day: cycles (6+2)/2 = 4, so plain water of 200 mg/L ends at 800 mg/L
  // (UFC 3-240-13FN, cycles of concentration), with the time constant 200/2 = 100 days: 20 of them here.
  const tank = filled(200, 0, 200)
  const days = 1 / 48
  for (let step = 0; step < 2000 * 48; step++) {
    pass(tank, { evaporated: 6 * days, carried: 2 * days, days }, quiet)
    pour(tank, { volume: 200 - volumeOf(tank), strength: 0, product: 0, hardness: 200, salts: 0 })
  }
  expect(hardnessOf(tank)).toBeGreaterThan(799)
  expect(hardnessOf(tank)).toBeLessThan(801)
})

test('scum takes from hard fluid only, chips give', () => {
  const tank = filled(100, 0, 100)
  pass(tank, { evaporated: 0, carried: 0, days: 1 }, { depletion: 0, scum: 0.01, chips: 3 })
  expect(hardnessOf(tank)).toBeCloseTo(103, 10)
  const hard = filled(100, 0, 250)
  pass(hard, { evaporated: 0, carried: 0, days: 1 }, { depletion: 0, scum: 0.01, chips: 0 })
  expect(hardnessOf(hard)).toBeCloseTo(249, 10)
})
