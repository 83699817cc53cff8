import { expect, test } from 'vitest'
import { holdToBounds } from './bounds.ts'
import { carryOff, chloride, evaporation, fill, hardness, scale, size, strength } from './state.ts'
import { beliefOf } from './testing.ts'

const usual = { [fill]: 0.9, [strength]: 8, [hardness]: 200, [chloride]: 60, [evaporation]: -4, [carryOff]: -5 }

test('what can be stays as it is', () => {
  const belief = beliefOf(usual, { [fill]: 0.01, [strength]: 1 })
  holdToBounds(belief)
  const { holdUp, full } = { holdUp: 9, full: 12 }
  expect([...belief.cov]).toEqual([...beliefOf(usual, { [fill]: 0.01, [strength]: 1 }).cov])
  for (const i of [fill, strength, hardness, chloride, evaporation, carryOff]) {
    expect(belief.mean[i]).toBe(usual[i as keyof typeof usual])
  }
  expect(belief.mean[holdUp]).toBe(0)
  expect(belief.mean[full]).toBeGreaterThan(0)
})

test.each([
  ['fill', fill, -3, 0.001],
  ['strength', strength, -1, 0],
  ['strength', strength, 140, 99],
  ['hardness', hardness, -1, 0],
  ['chloride', chloride, 1e9, 20_000],
  ['scale', scale, 9, 2.5],
  ['no number', strength, Number.NaN, 0],
])('nothing is less than nothing or more than can be: %s', (_, i, value, held) => {
  const belief = beliefOf({ ...usual, [i]: value })
  holdToBounds(belief)
  expect(belief.mean[i]).toBe(held)
})

test('what is too uncertain is drawn in with all that it is tied to', () => {
  // Strength ± 56 where ± 28 is the most: halved, and with it what it shares with the fill.
  const belief = beliefOf(usual, { [strength]: 56 ** 2, [fill]: 0.25 })
  belief.cov[strength * size + fill] = 14
  belief.cov[fill * size + strength] = 14
  holdToBounds(belief)
  expect(belief.cov[strength * (size + 1)]).toBeCloseTo(28 ** 2, 9)
  expect(belief.cov[strength * size + fill]).toBeCloseTo(7, 12)
  expect(belief.cov[fill * size + strength]).toBe(belief.cov[strength * size + fill])
  expect(belief.cov[fill * (size + 1)]).toBe(0.25)
})
