import { roundSigns } from '@sumpbook/fluid'
import { expect, test } from 'vitest'
import { isAllSeen, notLooked, saySeen, senses, signsOf, stopsOf } from './signs.ts'

test('fine writes nothing down', () => {
  expect(signsOf({ look: 'fine', smell: 'fine', oil: 'fine' })).toEqual([])
})

test('not looked is not fine, and writes nothing down either', () => {
  expect(signsOf(notLooked)).toEqual([])
  expect(isAllSeen(notLooked)).toBe(false)
  expect(isAllSeen({ look: 'fine', smell: 'fine', oil: 'film' })).toBe(true)
})

test('what is off is written down as a sign', () => {
  expect(signsOf({ look: 'foam', smell: 'rancid', oil: 'film' })).toEqual(['foam', 'rancid smell', 'oil film'])
})

test('the row says each tap, and a dash where nobody looked', () => {
  expect(saySeen({ look: 'fine', smell: null, oil: 'film' })).toBe('fine · – · film')
  expect(saySeen(notLooked)).toBe('')
})

test('a split fluid warns against pouring', () => {
  expect(stopsOf({ look: 'split', smell: 'fine', oil: 'fine' }).join(' ')).toContain('pour nothing into it')
})

test('what can kill is said before anything else', () => {
  const [first] = stopsOf({ look: 'split', smell: 'eggs', oil: 'layer' })
  expect(first).toContain('do not start pumps')
})

test('the taps are the signs that a look without a finding speaks for', () => {
  expect(senses.flatMap(({ choices }) => choices.flatMap(({ sign }) => sign ?? []))).toEqual([...roundSigns])
})
