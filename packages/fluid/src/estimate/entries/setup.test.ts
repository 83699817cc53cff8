import { expect, test } from 'vitest'
import { start } from '../priors.ts'
import { litresOf } from '../shop-estimate.ts'
import { scale, size } from '../state.ts'
import { charge, reading, setup, shopOf, specOf, sumpOf } from '../testing.ts'
import { describe, guessMark } from './setup.ts'

test('a mark that was moved carries over what was learnt: the litres stay, and are doubted again', () => {
  const sump = sumpOf(shopOf([setup('s')]))
  const [branch] = sump.branches
  branch!.belief.mean[scale] = Math.log(1.1)
  const [litres, before] = [litresOf(branch!, sump), branch!.belief.cov[scale * (size + 1)]!]
  describe(sump, specOf({ mark: 250 }))
  expect(sump.plate).toBe(250)
  expect(litresOf(branch!, sump)).toBeCloseTo(litres, 9)
  expect(branch!.belief.mean[scale]).toBeCloseTo(Math.log((1.1 * 200) / 250), 12)
  expect(branch!.belief.cov[scale * (size + 1)]).toBeCloseTo(before + (start.scaleSd / 2) ** 2, 12)
})

test('another target or fluid changes nothing of where the sump stands', () => {
  const sump = sumpOf(shopOf([setup('s')]))
  const before = [...sump.branches[0]!.belief.cov]
  describe(sump, specOf({ target: 5, fluid: 'b' }))
  expect(sump.spec).toMatchObject({ target: 5, fluid: 'b' })
  expect([...sump.branches[0]!.belief.cov]).toEqual(before)
})

test('a mark that becomes known takes the place of a guess, one that is taken back becomes one', () => {
  const unknown = sumpOf(shopOf([setup('s', { mark: null, capacity: 400 })]))
  expect(unknown.plate).toBe(320)
  describe(unknown, specOf({ mark: 300 }))
  expect(unknown.plate).toBe(300)
  const known = sumpOf(shopOf([setup('s', { mark: 180 })]))
  describe(known, specOf({ mark: null, capacity: 500 }))
  expect(known.plate).toBe(400)
})

test('a sump of which nothing is known is as large as the first litres that are told of it', () => {
  const nothing = { mark: null, capacity: null }
  expect(sumpOf(shopOf([setup('s', nothing), charge('s', 1, { volume: 90 })])).plate).toBe(90)
  expect(sumpOf(shopOf([setup('s', nothing), reading('s', 1, { seen: 1200 })])).plate).toBe(1200)
  // Not again by the second, nor by nothing, nor where plate or brim say it.
  const told = [setup('s', nothing), charge('s', 1, { volume: 90 }), charge('s', 2, { volume: 500 })]
  expect(sumpOf(shopOf(told)).plate).toBe(90)
  expect(sumpOf(shopOf([setup('s', nothing), charge('s', 1, { volume: 0 })])).plate).toBe(200)
  expect(sumpOf(shopOf([setup('s'), charge('s', 1, { volume: 90 })])).plate).toBe(200)
  const brim = sumpOf(shopOf([setup('s', { mark: null, capacity: 250 })]))
  guessMark(brim, 70)
  expect(brim.plate).toBe(200)
})
