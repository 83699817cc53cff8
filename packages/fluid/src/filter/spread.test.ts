import fc from 'fast-check'
import { expect, test } from 'vitest'
import { newBelief } from './belief.ts'
import { shake, spread } from './spread.ts'

test('a step goes along its slopes', () => {
  // F = [[1, 2], [0, 1]], P = [[4, 1], [1, 9]]: F P = [[6, 19], [1, 9]], F P Fᵀ = [[6 + 38, 19], [19, 9]].
  const belief = newBelief(2)
  belief.cov.set([4, 1, 1, 9])
  spread(belief, 2, Float64Array.of(1, 2, 0, 1))
  expect([...belief.cov]).toEqual([44, 19, 19, 9])
})

test('quantities that do not move keep their own, and what ties them to those that do', () => {
  // A = [2, 0, 3] for the first of three: with P of the others and F = [[2, 0, 3], [0, 1, 0], [0, 0, 1]],
  // row 1 of F P = [2·4 + 3·2, 2·1 + 3·3, 2·2 + 3·16] = [14, 11, 52]; P₁₁ = 2·14 + 3·52 = 184.
  const belief = newBelief(3)
  belief.cov.set([4, 1, 2, 1, 9, 3, 2, 3, 16])
  spread(belief, 1, Float64Array.of(2, 0, 3))
  expect([...belief.cov]).toEqual([184, 11, 52, 11, 9, 3, 52, 3, 16])
})

test('noise along a direction moves its quantities together', () => {
  const belief = newBelief(3)
  belief.cov.set([4, 1, 2, 1, 9, 3, 2, 3, 16])
  // 0.5 · (2, −1)(2, −1)ᵀ = [[2, −1], [−1, 0.5]] on the first two.
  shake(belief, 2, Float64Array.of(2, -1), 0.5)
  expect([...belief.cov]).toEqual([6, 0, 2, 0, 9.5, 3, 2, 3, 16])
})

test('a step is F P Fᵀ, whatever F and P are, and symmetric to the last bit', () => {
  const figure = fc.double({ min: -3, max: 3, noNaN: true })
  fc.assert(
    fc.property(
      fc.array(figure, { minLength: 16, maxLength: 16 }),
      fc.array(figure, { minLength: 8, maxLength: 8 }),
      (roots, rows) => {
        const n = 4
        const belief = newBelief(n)
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++)
            for (let k = 0; k < n; k++) belief.cov[i * n + j]! += roots[i * n + k]! * roots[j * n + k]!
        const p = belief.cov.slice()
        const f = Float64Array.of(...rows, 0, 0, 1, 0, 0, 0, 0, 1)
        spread(belief, 2, Float64Array.from(rows))
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++) {
            let sum = 0
            for (let k = 0; k < n; k++) for (let l = 0; l < n; l++) sum += f[i * n + k]! * p[k * n + l]! * f[j * n + l]!
            expect(Math.abs(belief.cov[i * n + j]! - sum)).toBeLessThan(1e-9)
            expect(belief.cov[i * n + j]).toBe(belief.cov[j * n + i])
          }
      },
    ),
  )
})
