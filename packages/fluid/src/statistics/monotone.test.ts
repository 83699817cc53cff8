import fc from 'fast-check'
import { expect, test } from 'vitest'
import { monotoneFit } from './monotone.ts'

const fit = (...values: number[]) => monotoneFit(values.map((value) => ({ value, weight: 1 })))

test('values that rise stay as they are', () => {
  expect(fit(1, 2, 5)).toEqual([1, 2, 5])
  expect(fit()).toEqual([])
})

test('neighbours that fall become their mean', () => {
  expect(fit(1, 3, 2, 4)).toEqual([1, 2.5, 2.5, 4])
  expect(fit(3, 2, 1)).toEqual([2, 2, 2])
})

test('a mean may have to take in what came before it', () => {
  // 4 and 0 make 2, which lies below 3: 3, 4 and 0 make 7/3.
  expect(fit(3, 4, 0)).toEqual([7 / 3, 7 / 3, 7 / 3])
})

test('what counts more moves less', () => {
  // (3·3 + 1·1) / 4
  expect(
    monotoneFit([
      { value: 3, weight: 3 },
      { value: 1, weight: 1 },
    ]),
  ).toEqual([2.5, 2.5])
})

test('a value that is no number and a weight of nothing are refused', () => {
  expect(() => fit(1, Number.NaN)).toThrow('values.1.value is NaN')
  expect(() => monotoneFit([{ value: 1, weight: 0 }])).toThrow('values.0.weight is 0, expected above 0')
})

const weighted = fc.record({
  value: fc.double({ min: -100, max: 100, noNaN: true }),
  weight: fc.double({ min: 0.1, max: 10, noNaN: true }),
})

test('no other sequence that never falls lies closer', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(weighted, fc.double({ min: -100, max: 100, noNaN: true })), { maxLength: 12 }),
      (pairs) => {
        const values = pairs.map(([value]) => value)
        const fitted = monotoneFit(values)
        const other = pairs.map(([, y]) => y).sort((a, b) => a - b)
        const squares = (ys: number[]) =>
          values.reduce((sum, { value, weight }, i) => sum + weight * (value - ys[i]!) ** 2, 0)
        for (const [i, y] of fitted.entries())
          expect(y).toBeGreaterThanOrEqual(fitted[i - 1] ?? Number.NEGATIVE_INFINITY)
        expect(squares(other)).toBeGreaterThanOrEqual(squares(fitted) - 1e-9)
      },
    ),
  )
})
