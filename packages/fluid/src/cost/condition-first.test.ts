import { expect, test } from 'vitest'
import { conditionFindings, conditionFirst } from './condition-first.ts'

const sound = { signs: [], bacteria: null, bacteriaHigh: null }

test.each(conditionFindings)('%s takes a charge out of every reckoning of money', (sign) => {
  expect(conditionFirst({ ...sound, signs: ['foam', sign] })).toBe(sign)
})

test('other words of the trade for it count as well', () => {
  expect(conditionFirst({ ...sound, signs: ['Split'] })).toBe('emulsion split')
  expect(conditionFirst({ ...sound, signs: ['monday-morning smell'] })).toBe('rancid smell')
})

test('a count at its limit does, one below it or without a limit does not', () => {
  expect(conditionFirst({ ...sound, bacteria: 1e6, bacteriaHigh: 1e6 })).toBe('bacteria')
  expect(conditionFirst({ ...sound, bacteria: 9e5, bacteriaHigh: 1e6 })).toBe(null)
  expect(conditionFirst({ ...sound, bacteria: 1e9 })).toBe(null)
})

test('foam, dirt and words nobody knows do not', () => {
  expect(conditionFirst({ ...sound, signs: ['foam', 'dirt', 'purple'] })).toBe(null)
})
