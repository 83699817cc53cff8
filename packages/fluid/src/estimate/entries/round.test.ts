import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { alone, offsetOf, type RoundSight } from './round.ts'

const priors = { ...publishedPriors, roundOffset: 0.08 }
/** So many sumps, each read so much above what was expected of it. */
const roundOf = (apart: readonly number[], sd = 0.2): RoundSight[] =>
  apart.map((by, i) => ({ entry: `r${i}`, sump: `s${i}`, at: i / 100, read: 6 + i + by, expected: 6 + i, sd }))
const all = (count: number, by: number) => Array<number>(count).fill(by)

test('alone a reading may be off by what instruments usually are', () => {
  expect(alone(priors)).toEqual({ mean: 0, variance: 0.08 ** 2, others: [], off: 0 })
  const one = roundOf([1])
  expect(offsetOf(one, priors)).toEqual({ ...alone(priors), others: one })
})

test('a round that fits has the mean of its readings, drawn to nothing by what instruments usually are', () => {
  // Four readings 0.06 high, sd 0.2: precision 4 / 0.04 + 1 / 0.0064 = 256.25; 4 · 0.06 / 0.04 / 256.25.
  const { mean, variance, off } = offsetOf(roundOf(all(4, 0.06)), priors)
  expect(mean).toBeCloseTo(6 / 256.25, 12)
  expect(variance).toBeCloseTo(1 / 256.25, 12)
  expect(off).toBe(0)
})

test('one instrument 0.4 °Brix high over eight sumps is off', () => {
  const { mean, off, others } = offsetOf(roundOf(all(8, 0.4)), priors)
  expect(off).toBeGreaterThan(0.5)
  expect(mean).toBeGreaterThan(0.3)
  expect(mean).toBeLessThanOrEqual(0.41)
  expect(others).toHaveLength(8)
  expect(offsetOf(roundOf(all(8, -0.4)), priors).mean).toBeCloseTo(-mean, 9)
})

test('a single misread figure does not move its round', () => {
  const calm = offsetOf(roundOf(all(7, 0)), priors)
  const { mean, off } = offsetOf(roundOf([...all(7, 0), 3]), priors)
  expect(off).toBeLessThan(0.05)
  expect(Math.abs(mean - calm.mean)).toBeLessThan(0.02)
})

test('nor does it hide that the instrument is off', () => {
  const { mean, off } = offsetOf(roundOf([...all(7, 0.4), -5]), priors)
  expect(off).toBeGreaterThan(0.5)
  expect(mean).toBeGreaterThan(0.3)
})

test('two sumps are too few to call an instrument off', () => {
  expect(offsetOf(roundOf(all(2, 0.8)), priors).off).toBe(0)
  expect(offsetOf(roundOf(all(3, 0.8)), priors).off).toBeGreaterThan(0.5)
})

test('an error too small to ask about is taken off and not asked about', () => {
  const { mean, off } = offsetOf(roundOf(all(12, 0.17), 0.06), priors)
  expect(mean).toBeGreaterThan(0.11)
  expect(off).toBe(0)
})

test('what was taken off again and again is no error of a round: only what goes beyond it is', () => {
  const round = roundOf(all(8, 0.4))
  const first = offsetOf(round, priors)
  const again = offsetOf(round, priors, 0.3)
  expect(again.off).toBe(0)
  expect(again.mean).toBeLessThan(first.mean - 0.25)
  expect(again.mean).toBeGreaterThanOrEqual(0)
  // What was taken off the other way stays out of it.
  expect(offsetOf(round, priors, -0.05).mean).toBeGreaterThan(0.3)
})

test('readings that are all wild leave the error between what instruments are and what the readings say', () => {
  const { mean, variance } = offsetOf(roundOf([8, -9, 20, -15]), priors)
  expect(Math.abs(mean)).toBeLessThan(0.1)
  expect(Number.isFinite(variance) && variance > 0).toBe(true)
})

test('an error is never taken as known to nothing', () => {
  expect(offsetOf(roundOf(all(400, 0.01), 0.05), priors).variance).toBeGreaterThanOrEqual((0.25 * 0.08) ** 2)
})
