import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type CalibrationPoint, fitLine } from './line.ts'

const points = (pairs: [number, number][]): CalibrationPoint[] => pairs.map(([x, y]) => ({ x, y }))

test('points on a line give that line, and no residual', () => {
  const exact = points([
    [0, 1],
    [1, 3],
    [4, 9],
  ])
  expect(fitLine(exact)).toMatchObject({
    slope: 2,
    intercept: expect.closeTo(1, 12),
    residualSd: expect.closeTo(0, 12),
    n: 3,
    degreesOfFreedom: 1,
  })
})

test('the line of least squares leaves what hand arithmetic leaves', () => {
  // x̄ 2, ȳ 2; Σ(x−x̄)² 2, Σ(x−x̄)y 1.5: slope 0.75, intercept 0.5; residuals 0.25, −0.5, 0.25: squares 0.375
  const line = fitLine(
    points([
      [1, 1.5],
      [2, 1.5],
      [3, 3],
    ]),
  )
  expect(line).toMatchObject({ slope: 0.75, intercept: 0.5, residualSquares: 0.375, centre: 2, spread: 2 })
  expect(line.residualSd).toBeCloseTo(Math.sqrt(0.375), 14)
  expect(line.slopeSd).toBeCloseTo(Math.sqrt(0.375 / 2), 14)
  // 0.375 × (1/3 + 4/2)
  expect(line.interceptSd).toBeCloseTo(Math.sqrt(0.375 * (7 / 3)), 14)
})

test('held to zero the line has its slope alone', () => {
  // Σxy 1 + 6 = 7, Σx² 5: slope 1.4; residuals −0.4, 0.2: squares 0.2
  const line = fitLine(
    points([
      [1, 1],
      [2, 3],
    ]),
    { throughZero: true },
  )
  expect(line).toMatchObject({ slope: 1.4, intercept: 0, interceptSd: 0, degreesOfFreedom: 1, centre: 0, spread: 5 })
  expect(line.residualSd).toBeCloseTo(Math.sqrt(0.2), 14)
  expect(line.slopeSd).toBeCloseTo(Math.sqrt(0.2 / 5), 14)
})

test('as many points as coefficients leave nothing to judge by', () => {
  const two = points([
    [0, 1],
    [1, 2],
  ])
  expect(fitLine(two)).toMatchObject({ slope: 1, slopeSd: null, interceptSd: null, residualSd: null })
  expect(fitLine(points([[4, 6]]), { throughZero: true })).toMatchObject({ slope: 1.5, slopeSd: null, interceptSd: 0 })
})

test.each<[string, [number, number][], boolean]>([
  ['points is 0, expected points at 2 different values', [], false],
  ['points is 1, expected points at 2 different values', [[1, 1]], false],
  [
    'points is 1, expected points at 2 different values',
    [
      [1, 1],
      [1, 2],
    ],
    false,
  ],
  ['points is 1, expected at least 1 point off zero', [[0, 1]], true],
  ['points.0.x is NaN', [[Number.NaN, 1]], true],
  [
    'points.1.y is Infinity',
    [
      [1, 1],
      [2, Number.POSITIVE_INFINITY],
    ],
    false,
  ],
])('%s is refused', (message, pairs, throughZero) => {
  expect(() => fitLine(points(pairs), { throughZero })).toThrow(message)
})

test('no other line lies closer to the points', () => {
  const value = fc.double({ min: -100, max: 100, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), value), { minLength: 3 }),
      value,
      value,
      (pairs, tilt, lift) => {
        fc.pre(new Set(pairs.map(([x]) => x)).size > 1)
        const { slope, intercept, residualSquares } = fitLine(points(pairs))
        const other = pairs.reduce((sum, [x, y]) => sum + (y - intercept - lift - (slope + tilt) * x) ** 2, 0)
        expect(other).toBeGreaterThanOrEqual(residualSquares * (1 - 1e-9) - 1e-9)
      },
    ),
  )
})
