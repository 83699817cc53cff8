import { expect, test } from 'vitest'
import { chanceOf, mersenneTwister } from './random.ts'

test('the ten-thousandth number of the default engine is the one the C++ standard names', () => {
  // ISO/IEC 14882, [rand.predef]: the 10000th consecutive invocation of std::mt19937 (seed 5489) gives 4123659995.
  const next = mersenneTwister(5489)
  let last = 0
  for (let i = 0; i < 10_000; i++) last = next()
  expect(last).toBe(4_123_659_995)
})

test('normal draws have the moments of a normal distribution', () => {
  const chance = chanceOf(1, 2)
  const draws = Array.from({ length: 20_000 }, () => chance.normal(2))
  const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length
  const square = draws.reduce((sum, x) => sum + x * x, 0) / draws.length
  // Standard errors: 2/√20000 = 0.014 and 4·√(2/20000) = 0.04; five of them.
  expect(Math.abs(mean)).toBeLessThan(0.07)
  expect(Math.abs(square - 4)).toBeLessThan(0.2)
})

test('the same seed and place give the same draws, another place gives others', () => {
  expect(chanceOf(7, 1).unit()).toBe(chanceOf(7, 1).unit())
  expect(chanceOf(7, 1).unit()).not.toBe(chanceOf(7, 2).unit())
})
