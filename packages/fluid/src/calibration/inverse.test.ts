import fc from 'fast-check'
import { expect, test } from 'vitest'
import { studentQuantile } from '../statistics/student.ts'
import { type InverseQuestion, inversePrediction } from './inverse.ts'
import { fitLine } from './line.ts'

const calibration = [
  { x: 0, y: 0.1 },
  { x: 2, y: 1.2 },
  { x: 4, y: 2.6 },
  { x: 6, y: 3.7 },
  { x: 8, y: 5.1 },
  { x: 10, y: 6.2 },
]

function answerOf(question: Partial<InverseQuestion>) {
  const answer = inversePrediction({ calibration, y0: 3, ...question })
  if (answer.outcome !== 'x') throw new Error(answer.outcome)
  return answer
}

test('x is where the line reaches the reading', () => {
  const { slope, intercept } = fitLine(calibration)
  expect(answerOf({ y0: 3 })).toMatchObject({ x: expect.closeTo((3 - intercept) / slope, 12), within: true })
})

test('at either end of the interval a reading of that x would just be contradicted', () => {
  // Fieller's definition: |ȳ0 − line(x)| = t s √(1/m + 1/n + (x − x̄)²/spread)
  const { x: _, low, high, pooledSd, degreesOfFreedom } = answerOf({ y0: [3, 3.2], level: 0.95 })
  const line = fitLine(calibration)
  const t = studentQuantile({ probability: 0.975, degreesOfFreedom })
  for (const end of [low, high]) {
    const misses = Math.abs(3.1 - line.intercept - line.slope * end)
    const allowed = t * pooledSd * Math.sqrt(1 / 2 + 1 / 6 + (end - line.centre) ** 2 / line.spread)
    expect(misses).toBeCloseTo(allowed, 12)
  }
})

test('one reading given as a list is the same as given alone', () => {
  expect(inversePrediction({ calibration, y0: [3] })).toEqual(inversePrediction({ calibration, y0: 3 }))
})

test('repeats are pooled with the line: n + m − 3 degrees of freedom', () => {
  expect(answerOf({ y0: 3 }).degreesOfFreedom).toBe(4)
  const { pooledSd, degreesOfFreedom, residualSd } = answerOf({ y0: [2.9, 3.1] })
  expect(degreesOfFreedom).toBe(5)
  expect(pooledSd).toBeCloseTo(Math.sqrt((fitLine(calibration).residualSquares + 0.02) / 5), 12)
  expect(residualSd).toBe(fitLine(calibration).residualSd)
})

test('a wanted mean is narrower than a reading', () => {
  const [reading, mean] = [answerOf({ y0: 3 }), answerOf({ y0: 3, as: 'mean' })]
  expect(mean.high - mean.low).toBeLessThan(reading.high - reading.low)
})

test('the level is 0.9 unless given, and a higher one is wider', () => {
  expect(answerOf({})).toEqual(answerOf({ level: 0.9 }))
  expect(answerOf({ level: 0.99 }).low).toBeLessThan(answerOf({}).low)
})

test('a falling line has its low end low as well', () => {
  const falling = calibration.map(({ x, y }) => ({ x, y: 10 - y }))
  const answer = inversePrediction({ calibration: falling, y0: 7 })
  expect(answer).toMatchObject({ x: expect.closeTo(answerOf({ y0: 3 }).x, 10) })
  if (answer.outcome === 'x') expect(answer.low).toBeLessThan(answer.high)
})

test('beyond the calibrated range the answer says so', () => {
  expect(answerOf({ y0: 7 }).within).toBe(false)
})

test('without a slope there is no x', () => {
  const flat = [1, 2, 3, 4].map((x) => ({ x, y: [1, 2, 2, 1][x - 1]! }))
  expect(inversePrediction({ calibration: flat, y0: 1.5 })).toMatchObject({ outcome: 'slope-not-significant' })
  const noisy = [1, 2, 3, 4].map((x) => ({ x, y: [1, 3, 0, 4][x - 1]! }))
  expect(inversePrediction({ calibration: noisy, y0: 2 })).toMatchObject({ outcome: 'slope-not-significant' })
  const two = [
    { x: 0, y: 1 },
    { x: 1, y: 1 },
  ]
  expect(inversePrediction({ calibration: two, y0: 1 })).toMatchObject({ outcome: 'slope-not-significant' })
})

test('two points and one reading say where, but not how sure', () => {
  const two = [
    { x: 0, y: 0 },
    { x: 10, y: 5 },
  ]
  expect(inversePrediction({ calibration: two, y0: 2 })).toMatchObject({ outcome: 'no-scatter', x: 4 })
  // A second reading brings the first notion of scatter.
  expect(inversePrediction({ calibration: two, y0: [2, 2.01] })).toMatchObject({ outcome: 'x', residualSd: null })
})

test.each<[string, Partial<InverseQuestion>]>([
  ['calibration is 0, expected points at 2', { calibration: [] }],
  ['calibration.0.y is NaN', { calibration: [{ x: 0, y: Number.NaN }, ...calibration] }],
  ['y0 is NaN', { y0: Number.NaN }],
  ['y0 is 0, expected at least 1', { y0: [] }],
  ['y0.1 is Infinity', { y0: [1, Number.POSITIVE_INFINITY] }],
  ['level is 90', { level: 90 }],
])('%s is refused', (message, change) => {
  expect(() => inversePrediction({ calibration, y0: 3, ...change })).toThrow(message)
})

test('the interval always holds x', () => {
  const scatter = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 })
  fc.assert(
    fc.property(scatter, fc.double({ min: -5, max: 15, noNaN: true }), (errors, y0) => {
      const noisy = calibration.map(({ x, y }, index) => ({ x, y: y + errors[index]! }))
      const answer = inversePrediction({ calibration: noisy, y0 })
      if (answer.outcome !== 'x') return
      expect(answer.low).toBeLessThanOrEqual(answer.x)
      expect(answer.high).toBeGreaterThanOrEqual(answer.x)
    }),
  )
})
