import { expect, test } from 'vitest'
import { sayOtherWater, sayPlannedDay } from './what-if.ts'

const figure = (mean: number, low90: number, high90: number) => ({ mean, sd: 1, low90, high90 })
const reader = { units: 'metric' } as const

test.each([
  [91, 'In 13 weeks 7.6 % (6.9–8.3), hardness 230 ppm (190–270).'],
  [7, 'In 1 week 7.6 % (6.9–8.3), hardness 230 ppm (190–270).'],
  [10, 'In 10 days 7.6 % (6.9–8.3), hardness 230 ppm (190–270).'],
])('a plan is said for its day: %i', (days, words) => {
  const day = { days, concentration: figure(7.6, 6.9, 8.3), hardness: figure(230, 190, 270) }
  expect(sayPlannedDay(day, reader)).toBe(words)
})

test('another water is said by what it would have changed', () => {
  expect(sayOtherWater({ asPoured: 190, asked: 45.2 }, 'deionised water', reader)).toBe(
    'With deionised water since then its hardness would now be about 45 ppm instead of 190 ppm, by the same reckoning.',
  )
})

test('what changes nothing is said to change nothing', () => {
  expect(sayOtherWater({ asPoured: 190.2, asked: 190 }, 'tap water', reader)).toBe(
    'With tap water since then its hardness would be the same.',
  )
})
