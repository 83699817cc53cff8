import { expect, test } from 'vitest'
import { chanceOf } from '../simulate/random.ts'
import { digitsExchanged, leastSlip, pointMoved, slipOf, wholeOff } from './slips.ts'

const chance = chanceOf(5, 1)

test('a moved point makes ten times as much or a tenth', () => {
  const found = new Set(Array.from({ length: 40 }, () => pointMoved(5.2, chance)))
  expect([...found].sort()).toEqual([0.5, 52])
})

test.each([
  [5.2, 2.5],
  [10.4, 14],
  [4.4, 4.4],
])('exchanged digits of %d make %d', (shown, written) => {
  expect(digitsExchanged(shown)).toBe(written)
})

test('a miscounted line is one to three wholes off', () => {
  const found = new Set(Array.from({ length: 80 }, () => wholeOff(5.2, chance)))
  expect([...found].sort()).toEqual([2.2, 3.2, 4.2, 6.2, 7.2, 8.2])
})

test('one to two readings in a hundred slip, each by something that can be seen', () => {
  const slips = Array.from({ length: 20_000 }, () => slipOf(5.2, chance)).filter((slip) => slip !== null)
  expect(slips.length).toBeGreaterThan(200)
  expect(slips.length).toBeLessThan(400)
  expect(Math.min(...slips.map((slip) => Math.abs(slip - 5.2)))).toBeGreaterThanOrEqual(leastSlip)
})
