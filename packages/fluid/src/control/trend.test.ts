import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type TimedValue, trendOf } from './trend.ts'

const series = (...values: number[]): TimedValue[] => values.map((value, at) => ({ at, value }))

test('a straight line has its slope and intercept, and the surest trend there is', () => {
  const trend = trendOf(series(5, 7, 9, 11, 13, 15))
  expect(trend).toMatchObject({ slope: 2, intercept: 5, low: 2, high: 2, score: 15, tau: 1, direction: 'rising', n: 6 })
  // var = 6 · 5 · 17 / 18 = 28.33; z = 14 / 5.323
  expect(trend.z).toBeCloseTo(14 / Math.sqrt(85 / 3), 12)
})

test('one wild value does not make a trend', () => {
  const trend = trendOf(series(5, 5.1, 4.9, 5, 50, 5.1, 4.9, 5))
  expect(trend.direction).toBe('none')
  expect(Math.abs(trend.slope)).toBeLessThan(0.05)
})

test('a series that falls says so', () => {
  expect(trendOf(series(9.4, 9.3, 9.3, 9.1, 9.0, 8.9, 8.9))).toMatchObject({ direction: 'falling' })
})

test('ties count neither way and make the score less variable', () => {
  // of 6 pairs 4 rise and 2 are tied; slopes 0, 0, 1/3, 1/2, 1/2, 1, the median between 1/3 and 1/2
  const trend = trendOf(series(1, 1, 2, 2))
  expect(trend).toMatchObject({ score: 4, slope: expect.closeTo(5 / 12, 12) })
  // two groups of two: 2 · 2·1·9 less
  expect(trend.variance).toBeCloseTo((4 * 3 * 13 - 2 * 18) / 18, 12)
  // tau-b: 4 / √(6 · 4)
  expect(trend.tau).toBeCloseTo(4 / Math.sqrt(24), 12)
})

test('values that are all equal have no trend', () => {
  expect(trendOf(series(3, 3, 3))).toMatchObject({ slope: 0, score: 0, z: 0, tau: 0, pValue: 1, direction: 'none' })
})

test('pairs of one time have no slope', () => {
  const twice = [
    { at: 0, value: 1 },
    { at: 0, value: 100 },
    { at: 1, value: 3 },
  ]
  // slopes 2 and −97
  expect(trendOf(twice)).toMatchObject({ slope: -47.5, score: 0 })
})

test.each<[string, TimedValue[]]>([
  ['observations is 2, expected at least 3', series(1, 2)],
  ['observations.1.value is NaN', series(1, Number.NaN, 3)],
  ['observations is 1, expected observations at 2 different times', [1, 2, 3].map((value) => ({ at: 7, value }))],
])('%s is refused', (message, observations) => {
  expect(() => trendOf(observations)).toThrow(message)
})

test('a level of 1 is refused', () => {
  expect(() => trendOf(series(1, 2, 3), { level: 1 })).toThrow('level is 1')
})

test('the interval holds the slope, and turning the series over turns the trend over', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 30 })
  fc.assert(
    fc.property(values, (values) => {
      const [trend, turned] = [trendOf(series(...values)), trendOf(series(...values.map((value) => -value)))]
      expect(trend.low).toBeLessThanOrEqual(trend.slope)
      expect(trend.high).toBeGreaterThanOrEqual(trend.slope)
      expect(turned.slope).toBeCloseTo(-trend.slope, 9)
      expect(turned.low).toBeCloseTo(-trend.high, 9)
      expect(turned.score + trend.score).toBe(0)
    }),
  )
})
