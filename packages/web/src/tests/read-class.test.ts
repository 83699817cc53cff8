import { expect, test } from 'vitest'
import { readClass } from './read-class.ts'

const ends = { min: 0, max: 500 }

test.each([
  ['', null],
  ['9.2', 9.2],
  ['9,2', 9.2],
  ['<10', { below: 10 }],
  ['under 10', { below: 10 }],
  ['10-25', { low: 10, high: 25 }],
  ['10 – 25', { low: 10, high: 25 }],
  ['10 to 25', { low: 10, high: 25 }],
  ['>80', { atLeast: 80 }],
  ['80+', { atLeast: 80 }],
  ['unter 10', { below: 10 }],
  ['10 bis 25', { low: 10, high: 25 }],
  ['mindestens 80', { atLeast: 80 }],
  ['menos de 10', { below: 10 }],
  ['10 a 25', { low: 10, high: 25 }],
  ['más de 80', { atLeast: 80 }],
])('“%s” is read', (text, value) => {
  expect(readClass(text, ends)).toEqual({ value })
})

test.each(['much', '25-10', '10-10', '<', '600', '10-600', '10-much'])('“%s” is a fault', (text) => {
  expect(readClass(text, ends)).toHaveProperty('fault')
})
