import { expect, test } from 'vitest'
import { factorFrom, readMixes, residualsOf, withFactor } from './factor-mixes.ts'

test('what the instrument shows on plain water is taken off; less than that is a fault', () => {
  const rows = [
    { percent: '5', brix: '3,5' },
    { percent: '1 in 20', brix: '0.3' },
    { percent: '10', brix: '' },
  ]
  const { mixes, faults } = readMixes(rows, 0.5)
  expect(mixes).toEqual([{ percent: 5, brix: 3 }])
  expect(faults[1]?.brix).toEqual({ found: '0.3', expected: 'at least 0.5 and at most 95' })
})

// Through zero: slope Σ percent × brix / Σ percent² = (4 × 2.4 + 8 × 5.2) / (16 + 64) = 0.64 °Brix per %, factor 1.5625.
test('mixes give a factor through zero, and each reading its distance from the line', () => {
  const mixes = [
    { percent: 4, brix: 2.4 },
    { percent: 8, brix: 5.2 },
  ]
  const found = factorFrom(mixes, true)
  expect(found).toMatchObject({ outcome: 'factor', factor: expect.closeTo(1.5625, 9) })
  if (found?.outcome !== 'factor') throw new Error('no factor')
  const residuals = residualsOf(mixes, found)
  expect(residuals[0]?.residual).toBeCloseTo(2.4 - 2.56, 9)
  expect(residuals[1]?.residual).toBeCloseTo(5.2 - 5.12, 9)
})

test('plain water alone gives no factor', () => {
  expect(factorFrom([], true)).toBeNull()
  expect(factorFrom([{ percent: 0, brix: 0 }], true)).toBeNull()
  expect(factorFrom([{ percent: 4, brix: 2 }], false)).toBeNull()
})

test('a dated factor joins the others, in the place of one of the same day; a lot’s own stays', () => {
  const fluid = {
    id: 'f',
    name: 'Semi',
    factors: [
      { from: '2026-01-01', brixFactor: 1.6 },
      { from: '2026-03-01', lot: '7', brixFactor: 1.8 },
    ],
  }
  expect(withFactor(fluid, '2026-03-01', 1.654321)).toEqual([
    ...fluid.factors,
    { from: '2026-03-01', brixFactor: 1.6543 },
  ])
  expect(withFactor(fluid, '2026-01-01', 1.7)).toEqual([fluid.factors[1], { from: '2026-01-01', brixFactor: 1.7 }])
})
