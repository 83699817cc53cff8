import { expect, test } from 'vitest'
import { groupOf, publishedPriors } from './priors.ts'

test('what is published is version 0, learnt from nothing', () => {
  expect(publishedPriors).toMatchObject({ version: 0, from: { sumps: 0, readings: 0, days: 0 } })
})

test('a machine is supposed to lose one to three percent of its mark on a day of work, more of it to the air', () => {
  const { evaporation, carryOff } = publishedPriors.groups.default!
  const lost = Math.exp(evaporation.mean) + Math.exp(carryOff.mean)
  expect(lost).toBeGreaterThan(0.01)
  expect(lost).toBeLessThan(0.03)
  expect(evaporation.mean).toBeGreaterThan(carryOff.mean)
})

test('a kind of sump that was never learnt has what all kinds have', () => {
  const own = { evaporation: { mean: -3, sd: 0.2 }, carryOff: { mean: -5, sd: 0.3 } }
  const priors = { ...publishedPriors, groups: { ...publishedPriors.groups, central: own } }
  expect(groupOf(priors, 'central')).toBe(own)
  expect(groupOf(priors, 'stand-alone')).toBe(publishedPriors.groups.default)
})
