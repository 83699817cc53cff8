import { expect, test } from 'vitest'
import { type AheadTexts, aheadOf, readAhead } from './build.ts'

const texts = (more: Partial<AheadTexts> = {}): AheadTexts => ({
  fillVolume: '200',
  volume: '',
  evaporation: '6',
  carryOff: '2',
  concentration: '8',
  target: '8',
  strength: '0',
  now: '200',
  limit: '600',
  present: '200',
  other: '0',
  inDays: '0',
  ...more,
})
const asked = { mineral: 'hardness', weeks: 26, names: { present: 'Tap', other: 'Deionised' } } as const

// V 200, E 6, D 2, plain water of 200 ppm: at rest 200 × 4 = 800 ppm with the time constant 100 days.
// 600 = 800 − 600 e^(−t/100): t = 100 ln 3 = 109.86 days. On water without minerals 200 e^(−t/100).
test('two futures, a step a week: the water of now comes to its limit, the other washes out', () => {
  const ahead = aheadOf(readAhead(texts(), 'hardness', 'metric'), asked)!
  const [tap, other] = ahead.futures
  expect(ahead.cycles).toBe(4)
  expect(ahead.topUpStrength).toBeCloseTo(2, 12)
  expect(tap).toMatchObject({ name: 'Tap', steady: expect.closeTo(800, 9), atLimit: expect.closeTo(109.8612, 3) })
  expect(tap!.series).toHaveLength(27)
  expect(tap!.series[1]).toMatchObject({ day: 7, value: expect.closeTo(800 - 600 * Math.exp(-0.07), 9) })
  expect(other).toMatchObject({ name: 'Deionised', atLimit: null })
  expect(other!.series[26]!.value).toBeCloseTo(200 * Math.exp(-1.82), 9)
})

test('another water in some weeks lets the minerals grow until then', () => {
  const ahead = aheadOf(readAhead(texts({ inDays: '70' }), 'hardness', 'metric'), asked)!
  const at70 = 800 - 600 * Math.exp(-0.7)
  expect(ahead.futures[1]!.series[10]!.value).toBeCloseTo(at70, 9)
  expect(ahead.futures[1]!.series[20]!.value).toBeCloseTo(at70 * Math.exp(-0.7), 9)
})

test('without a strength the top-ups hold the target: 8 % × 2 / 8 = 2 %', () => {
  const ahead = aheadOf(readAhead(texts({ strength: '' }), 'hardness', 'metric'), asked)!
  expect(ahead.strength).toBeCloseTo(2, 12)
  expect(ahead.futures[0]!.steady).toBeCloseTo(0.98 * 800, 9)
})

test('without another water there is one future, and without carry-off no end to it', () => {
  const ahead = aheadOf(readAhead(texts({ other: '', carryOff: '0' }), 'hardness', 'metric'), asked)!
  expect(ahead.futures).toHaveLength(1)
  expect(ahead.cycles).toBeNull()
  expect(ahead.futures[0]!.steady).toBeNull()
})

test('rates are read in the shop’s gallons', () => {
  expect(readAhead(texts({ evaporation: '2' }), 'hardness', 'us').values.evaporation).toBeCloseTo(7.570823568, 9)
})

test('what is missing is named, and a sump fuller than its mark is a fault', () => {
  const read = readAhead(texts({ evaporation: '', now: '', target: '', strength: '' }), 'chloride', 'metric')
  expect(read.missing).toEqual([
    'what evaporates a day',
    'the target or the strength of the top-ups',
    'the chloride in it now',
  ])
  expect(aheadOf(read, { ...asked, mineral: 'chloride' })).toBeNull()
  const over = readAhead(texts({ volume: '201' }), 'hardness', 'metric')
  expect(over.faults.volume).toBeDefined()
  expect(aheadOf(over, asked)).toBeNull()
})
