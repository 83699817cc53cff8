import { expect, test } from 'vitest'
import { type MethodPair, methodAgreement } from './agreement.ts'

const pairs: MethodPair[] = [
  { refractometer: 8.2, titration: 8, day: 0 },
  { refractometer: 7.5, titration: 7.1, day: 7 },
  { refractometer: 9, titration: 8.4, day: 14 },
  { refractometer: 8.8, titration: 8, day: 21 },
]

test('the mean difference is refractometer less titration', () => {
  // 0.2, 0.4, 0.6, 0.8: mean 0.5, squares 0.09 + 0.01 + 0.01 + 0.09 = 0.2, sd √(0.2/3) = 0.258199
  const found = methodAgreement(pairs)
  expect(found).toMatchObject({ n: 4, meanDifference: expect.closeTo(0.5, 12), sd: expect.closeTo(0.258199, 6) })
  // ± 1.95996 × 0.258199 = 0.506061
  expect(found.lower).toBeCloseTo(-0.006061, 5)
  expect(found.upper).toBeCloseTo(1.006061, 5)
  // t(97.5 %, 3) = 3.18245: × 0.258199 / 2 = 0.410852; × 0.258199 × √0.75 = 0.711618
  expect(found.meanLow).toBeCloseTo(0.089148, 5)
  expect(found.meanHigh).toBeCloseTo(0.910852, 5)
  expect(found.limitReach).toBeCloseTo(0.711618, 5)
})

test('a refractometer that creeps up shows as a trend', () => {
  // 0.2 a week
  expect(methodAgreement(pairs, { level: 0.9 }).trend).toMatchObject({ slope: expect.closeTo(0.2 / 7, 10), score: 6 })
})

test('without days, or all on one day, there is no trend', () => {
  expect(methodAgreement(pairs.map(({ day: _, ...pair }) => pair)).trend).toBeNull()
  expect(methodAgreement(pairs.map((pair) => ({ ...pair, day: 3 }))).trend).toBeNull()
})

test('a lower level has narrower limits', () => {
  expect(methodAgreement(pairs, { level: 0.9 }).upper).toBeLessThan(methodAgreement(pairs).upper)
})

test.each<[string, MethodPair[]]>([
  ['pairs is 1, expected at least 2', pairs.slice(1, 2)],
  ['pairs.0.refractometer is 101', [{ refractometer: 101, titration: 1 }, ...pairs]],
  ['pairs.0.titration is NaN', [{ refractometer: 1, titration: Number.NaN }, ...pairs]],
  ['pairs.0.day is NaN', [{ refractometer: 1, titration: 1, day: Number.NaN }, ...pairs]],
])('%s is refused', (message, given) => {
  expect(() => methodAgreement(given)).toThrow(message)
})
