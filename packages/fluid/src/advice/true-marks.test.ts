import { expect, test } from 'vitest'
import type { RecipeBench } from './bench.ts'
import { trueLitres, trueMarks } from './true-marks.ts'

const bench: RecipeBench = {
  brixFactor: 1.6,
  brixChart: null,
  resolution: 0.2,
  fillVolume: 200,
  capacity: 240,
  minVolume: 50,
  holdUp: 0,
  dipTable: null,
  target: 8,
  band: { low: 6, high: 10 },
  maxStrength: 20,
  minStrength: 0,
  class: null,
  waters: [],
  container: null,
  measure: null,
}
/** Of a logarithm: the middle of 90 to 250 is √(90 · 250) = 150. */
const mark = (low90: number, high90: number, sd: number) => ({
  mean: Math.sqrt(low90 * high90) * 1.02,
  sd,
  low90,
  high90,
})

test('a plate that says too much is believed less: 200 L that are 180 make 240 L 216, and 50 L 45', () => {
  expect(trueMarks(bench, mark(162, 200, 12))).toMatchObject({
    fillVolume: expect.closeTo(180, 9),
    capacity: expect.closeTo(216, 9),
    minVolume: expect.closeTo(45, 9),
  })
  expect(trueLitres(100, bench, mark(162, 200, 12))).toBeCloseTo(90, 9)
})

test('nothing learnt leaves the marks as they are', () => {
  expect(trueMarks(bench, null)).toEqual(bench)
  expect(trueLitres(100, bench, null)).toBe(100)
})

test('a mark that nobody measured serves once it is known well', () => {
  const unknown = { ...bench, fillVolume: null, minVolume: null }
  expect(trueMarks(unknown, mark(90, 250, 50)).fillVolume).toBeNull()
  expect(trueMarks(unknown, mark(135, 166.6666667, 10)).fillVolume).toBeCloseTo(150, 4)
  expect(trueLitres(100, unknown, mark(135, 166.6666667, 10))).toBe(100)
})

test('the brim is never under the mark, the suction never above it', () => {
  const odd = trueMarks({ ...bench, capacity: 190, minVolume: 210 }, mark(162, 200, 12))
  expect(odd.capacity).toBeCloseTo(180, 9)
  expect(odd.minVolume).toBeCloseTo(180, 9)
})
