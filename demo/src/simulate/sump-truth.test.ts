import { expect, test } from 'vitest'
import {
  concentrationOf,
  deplete,
  emptySump,
  evaporate,
  hardnessOf,
  type SumpTruth,
  takeIn,
  takeOut,
} from './sump-truth.ts'

const filled = (volume: number, strength: number, hardness: number): SumpTruth => {
  const sump = emptySump()
  takeIn(sump, 0, 'poured', { volume, strength, hardness })
  return sump
}

test('200 L at 200 mg/L losing 6 L of water and 2 L of mix a day, topped up with pure water of 200 mg/L, harden to four times that', () => {
  // Closed form h(E+D)/D − (h(E+D)/D − h) exp(−Dt/V) with E 6, D 2, V 200, h 200:
  // 800 − 600 exp(−t/100): 355.5 at 30 d, 556.1 at 90, 700.8 at 180, 784.4 at 365.
  const sump = filled(200, 0, 200)
  const found: number[] = []
  for (let minute = 0; minute <= 365 * 1440; minute++) {
    if ([30, 90, 180, 365].includes(minute / 1440)) found.push(hardnessOf(sump))
    evaporate(sump, 0, 6 / 1440)
    takeOut(sump, 0, 'carried-off', 2 / 1440)
    takeIn(sump, 0, 'poured', { volume: 8 / 1440, strength: 0, hardness: 200 })
  }
  const expected = [355.5, 556.1, 700.8, 784.4]
  // A minute's carry-off leaves after its evaporation, from fluid up to 0.0042 L / 200 L stronger: 0.02 mg/L of 800;
  // the values above are rounded to 0.05.
  expected.forEach((hardness, i) => {
    expect(Math.abs(found[i]! - hardness)).toBeLessThan(0.07)
  })
})

test('150 L at 6.5 % and 50 L at 4.5 % make 200 L at 6 %', () => {
  // (150 × 6.5 + 50 × 4.5) / 200 = (975 + 225) / 200 = 6.
  const sump = filled(150, 6.5, 100)
  takeIn(sump, 0, 'poured', { volume: 50, strength: 4.5, hardness: 100 })
  expect(concentrationOf(sump)).toBeCloseTo(6, 12)
})

test('what is taken out has the sump’s own composition, and never more leaves than there is', () => {
  const sump = filled(100, 8, 300)
  expect(takeOut(sump, 1, 'drawn-off', 25)).toEqual({ volume: 25, strength: 8, hardness: 300 })
  expect(concentrationOf(sump)).toBeCloseTo(8, 12)
  expect(takeOut(sump, 1, 'drawn-off', 1000).volume).toBe(75)
  expect([sump.volume, sump.concentrate, sump.hardness]).toEqual([0, 0, 0])
  expect(takeOut(sump, 1, 'drawn-off', 1).volume).toBe(0)
})

test('evaporation leaves concentrate and minerals behind', () => {
  const sump = filled(100, 8, 300)
  evaporate(sump, 1, 20)
  expect(sump.volume).toBe(80)
  expect(concentrationOf(sump)).toBeCloseTo(10, 12)
  expect(hardnessOf(sump)).toBeCloseTo(375, 12)
})

test('one flow a day and kind adds up what happened', () => {
  const sump = filled(100, 8, 300)
  evaporate(sump, 1, 1)
  evaporate(sump, 1, 2)
  evaporate(sump, 2, 4)
  deplete(sump, 2, { concentrate: 0.01, hardness: 0 })
  expect(sump.flows.map(({ day, kind, volume }) => [day, kind, volume])).toEqual([
    [0, 'poured', 100],
    [1, 'evaporated', -3],
    [2, 'evaporated', -4],
    [2, 'depleted', 0],
  ])
  expect(sump.flows.at(-1)!.concentrate).toBeCloseTo(-0.08, 12)
})
