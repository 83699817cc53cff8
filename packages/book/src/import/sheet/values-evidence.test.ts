import { expect, test } from 'vitest'
import { areEvidentlyBrix, bandOf } from './values-evidence.ts'

const sump = { id: 's', name: 'Mill', fluid: 'f' }
const band = (brixFactor: number) =>
  bandOf(sump, { id: 'f', name: 'F', brixFactor, limits: { concentration: { low: 6, high: 10 } } })!
const evident = (factor: number, ...figures: number[]) => areEvidentlyBrix([{ figures, band: band(factor) }])

test('figures that lie in the band as °Brix and not as percent are °Brix', () => {
  expect(evident(1.6, 4.2, 3.4, 3.5, 5, 7.5)).toBe(true)
})

test('figures that lie in the band as percent are asked about', () => {
  expect(evident(1.6, 8.1, 7.5, 6.2, 9)).toBe(false)
})

test('figures that could be either are asked about', () => {
  expect(evident(1.6, 6, 6.1, 6.2)).toBe(false)
})

test('with a factor of 1 both are the same', () => {
  expect(evident(1.05, 8, 8.1, 7.9)).toBe(true)
})

test('two figures say nothing', () => {
  expect(evident(1.6, 4.2, 3.4)).toBe(false)
})

test('without band or factor a machine is no evidence', () => {
  expect(bandOf(sump, { id: 'f', name: 'F', brixFactor: 1.6 })).toBeNull()
  expect(bandOf(sump, { id: 'f', name: 'F', limits: { concentration: { low: 6, high: 10 } } })).toBeNull()
  expect(
    bandOf({ ...sump, limits: { concentration: { low: 3, high: 5 } } }, { id: 'f', name: 'F', brixFactor: 1.6 }),
  ).toMatchObject({ low: 3 })
})
