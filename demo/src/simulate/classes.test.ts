import { expect, test } from 'vitest'
import { padsAbout, slideClass } from './classes.ts'

test.each([
  [0, { low: 0, high: 25 }],
  [24.9, { low: 0, high: 25 }],
  [25, { low: 25, high: 50 }],
  [424, { low: 250, high: 425 }],
  [425, { atLeast: 425 }],
])('a strip of pads 0, 25, 50, 250, 425 shows %d between its pads', (value, shown) => {
  expect(padsAbout([0, 25, 50, 250, 425], value)).toEqual(shown)
})

test('a slide shows tens', () => {
  expect([2.5, 3.5, 7].map(slideClass)).toEqual([{ below: 1000 }, { low: 1000, high: 10_000 }, { atLeast: 10_000_000 }])
})
