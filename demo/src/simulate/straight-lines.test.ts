import { expect, test } from 'vitest'
import { firstAt, secondAt } from './straight-lines.ts'

const dipTable = [
  [0, 0],
  [100, 40],
  [200, 100],
] as const

test.each([
  [50, 20],
  [100, 40],
  [150, 70],
  [250, 130],
])('%d mm are %d L, and back', (level, litres) => {
  expect(secondAt(dipTable, level)).toBeCloseTo(litres, 12)
  expect(firstAt(dipTable, litres)).toBeCloseTo(level, 12)
})
