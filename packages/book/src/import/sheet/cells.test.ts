import { expect, test } from 'vitest'
import { readCell } from './cells.ts'

const rule = { sign: '.', strict: false } as const

test.each(['', '-', '–', 'n/a', 'N/A', 'k.A.', 's/d', '--', '#N/A'])('"%s" is a gap', (text) => {
  expect(readCell(text, rule)).toEqual({ kind: 'gap' })
})

test.each([
  ['3.4', 3.4, null],
  ['60 gal', 60, 'gal'],
  ['<25', { below: 25 }, null],
  ['< 25 ppm', { below: 25 }, 'ppm'],
  ['≤25', { below: 25 }, null],
  ['>1000', { atLeast: 1000 }, null],
  ['>= 1e7', { atLeast: 1e7 }, null],
  ['1000+', { atLeast: 1000 }, null],
  ['über 425', { atLeast: 425 }, null],
  ['25-50', { low: 25, high: 50 }, null],
  ['25 – 50 ppm', { low: 25, high: 50 }, 'ppm'],
  ['25 bis 50', { low: 25, high: 50 }, null],
  ['8.5...9', { low: 8.5, high: 9 }, null],
  ['-5', -5, null],
] as const)('"%s" is a value', (text, value, unitText) => {
  expect(readCell(text, rule)).toEqual({ kind: 'value', value, unitText })
})

test.each(['about 3', 'ok', '<', 'pH 9', '<low'])('"%s" is words where a number belongs', (text) => {
  expect(readCell(text, rule)).toEqual({ kind: 'text' })
})
