import { type Belief, learn, learnMoments, spreadOf } from '../filter/index.ts'
import { normalAbove } from '../statistics/normal.ts'
import type { Reported } from './events.ts'
import { brixPerHardness, type ShopPriors } from './priors.ts'
import { bias, type chloride, fill, gauge, hardness, holdUp, size, strength, titration } from './state.ts'

const slope = new Float64Array(size)

/** A reading with what was expected of it. */
export interface Expected {
  read: number
  expected: number
  /** Of the reading about what was expected, its own error included. */
  sd: number
}

/**
 * One linear reading of a belief: what it is, and how it depends on the state. Those that the functions below give are valid until the next
 * is asked for; `keepSight` keeps one.
 */
export interface Sight {
  read: number
  expected: number
  variance: number
  first: number
  firstSlope: number
  second: number
  secondSlope: number
  third: number
  thirdSlope: number
}

const none = -1

/** The one sight that is being looked at: there are six for each reading, and none is kept. */
const looked: Sight = {
  read: 0.5,
  expected: 0.5,
  variance: 0.5,
  first: 0,
  firstSlope: 0.5,
  second: none,
  secondSlope: 0.5,
  third: none,
  thirdSlope: 0.5,
}

/** A sight that stays what it is. */
export const keepSight = (sight: Sight): Sight => ({ ...sight })

/** A refractometer shows what the concentrates bend, and what minerals, oil and dirt feign: y = C / f + c N + b. */
export function sightOfBrix(
  { mean }: Belief,
  reading: { brix: number; perPercent: number; offset: number; offsetVariance: number; resolution: number },
  { brixNoise }: ShopPriors,
): Sight {
  const { brix, perPercent, offset, offsetVariance, resolution } = reading
  const expected = mean[strength]! * perPercent + mean[hardness]! * brixPerHardness + mean[bias]! + offset
  const noise =
    brixNoise.fixed ** 2 + (brixNoise.share * Math.max(expected, 0)) ** 2 + resolution ** 2 / 12 + offsetVariance
  looked.read = brix
  looked.expected = expected
  looked.variance = noise
  looked.first = strength
  looked.firstSlope = perPercent
  looked.second = bias
  looked.secondSlope = 1
  looked.third = hardness
  looked.thirdSlope = brixPerHardness
  return looked
}

/** Titration finds the concentrate, give or take what else takes part. */
export function sightOfTitration({ mean }: Belief, percent: number): Sight {
  const expected = mean[strength]! + mean[titration]!
  looked.read = percent
  looked.expected = expected
  looked.variance = 0.2 ** 2 + (0.03 * Math.max(expected, 0)) ** 2
  looked.first = strength
  looked.firstSlope = 1
  looked.second = titration
  looked.secondSlope = 1
  looked.third = none
  looked.thirdSlope = 0
  return looked
}

/** An eye on the level sees the fluid that is not out in the lines, as a share of the mark. */
export function sightOfLevel(
  { mean }: Belief,
  { share, running }: { share: number; running: boolean },
  { levelNoise }: ShopPriors,
): Sight {
  looked.read = share
  looked.expected = mean[fill]! + mean[gauge]! - (running ? mean[holdUp]! : 0)
  looked.variance = levelNoise ** 2
  looked.first = fill
  looked.firstSlope = 1
  looked.second = running ? holdUp : none
  looked.secondSlope = running ? -1 : 0
  looked.third = gauge
  looked.thirdSlope = 1
  return looked
}

/** A figure of something dissolved, such as a test in drops: read to a tenth or so. */
export function sightOfMinerals({ mean }: Belief, which: typeof hardness | typeof chloride, value: number): Sight {
  looked.read = value
  looked.expected = mean[which]!
  looked.variance = (0.1 * Math.max(mean[which]!, value)) ** 2 + 5 ** 2
  looked.first = which
  looked.firstSlope = 1
  looked.second = none
  looked.secondSlope = 0
  looked.third = none
  looked.thirdSlope = 0
  return looked
}

function slopeOf(sight: Sight): Float64Array {
  slope.fill(0)
  slope[sight.first] = sight.firstSlope
  if (sight.second !== none) slope[sight.second] = sight.secondSlope
  if (sight.third !== none) slope[sight.third] = sight.thirdSlope
  return slope
}

/** The variance of a reading about what was expected, its own error included. */
export const varianceOf = (belief: Belief, sight: Sight): number => spreadOf(belief, slopeOf(sight), sight.variance)

/** Takes a reading in; the answer is the logarithm of how likely it was. */
export function takeSight(belief: Belief, sight: Sight): number {
  const surprise = sight.read - sight.expected
  const total = learn(belief, slopeOf(sight), surprise, sight.variance)
  return -0.5 * (Math.log(2 * Math.PI * total) + (surprise * surprise) / total)
}

/**
 * Takes in the class of a strip: the value read lies between two pads. The belief gets the moments of the normal cut off at
 * both ends.
 *
 * @returns the logarithm of how likely that class was
 */
export function takeClass(belief: Belief, which: typeof hardness | typeof chloride, low: number, high: number): number {
  const expected = belief.mean[which]!
  const middle = Math.min(high, Math.max(low, expected))
  const variance = (0.13 * middle) ** 2 + 3 ** 2
  slope.fill(0)
  slope[which] = 1
  const total = spreadOf(belief, slope, variance)
  const sd = Math.sqrt(total)
  const from = (low - expected) / sd
  const to = (high - expected) / sd
  const share = Math.max(normalAbove(clip(from)) - normalAbove(clip(to)), 0)
  if (!(share > 1e-12)) {
    // Far outside: as good as a reading at the nearer end.
    const end = from > 0 ? low : high
    return takeSight(belief, { ...sightOfMinerals(belief, which, end), variance: (0.2 * Math.max(end, 10)) ** 2 })
  }
  const [at, until] = [density(from), density(to)]
  const shift = (at - until) / share
  const edge = (Number.isFinite(from) ? from * at : 0) - (Number.isFinite(to) ? to * until : 0)
  const remaining = Math.min(1, Math.max(1e-4, 1 + edge / share - shift ** 2))
  learnMoments(belief, slope, variance, { shift: shift * sd, remaining: remaining * total })
  return Math.log(share)
}

/** Beyond 30 sd there is nothing. */
const clip = (z: number) => Math.max(-30, Math.min(30, z))

const density = (z: number) => (Number.isFinite(z) ? Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI) : 0)

/** The ends of a class; a figure has none. */
export function classOf(value: Reported): { low: number; high: number } | null {
  if (typeof value === 'number') return null
  if ('low' in value) return value
  if ('below' in value) return { low: Number.NEGATIVE_INFINITY, high: value.below }
  return { low: value.atLeast, high: Number.POSITIVE_INFINITY }
}

/** A class as a figure, for readings that are nearly always figures: its middle, or its end. */
export function middleOf(value: Reported): number {
  if (typeof value === 'number') return value
  if ('low' in value) return (value.low + value.high) / 2
  return 'below' in value ? value.below / 2 : value.atLeast
}
