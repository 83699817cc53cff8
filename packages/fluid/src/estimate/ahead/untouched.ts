import { type Belief, copyBelief, copyFirst, dropBelief, learnEach, spreadOf } from '../../filter/index.ts'
import type { Days } from '../../quantities.ts'
import type { ShopTime } from '../events.ts'
import { type Exposure, pass } from '../flow.ts'
import { exposureOf } from '../passing.ts'
import { type Branch, probabilities, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { carryOff, chloride, evaporation, fill, hardness, mixSize, scale, size, strength } from '../state.ts'
import type { Part } from './mixture.ts'

/**
 * A sump that nobody touches from a time on. What it comes to on a day is followed once, whoever asks for it, and is a function of the
 * shop's estimate as it is: it serves the questions of one moment and is not kept for another.
 */
export interface Untouched {
  readonly shop: ShopEstimate
  readonly sump: SumpState
  /** Not before what was taken in. */
  readonly now: ShopTime
  /** Logarithm of the litres that it truly holds at its mark, as is known now. */
  readonly mark: readonly Part[]
  /** Strength, percent, and volume, litres, after so many days. */
  mixIn(days: Days): Mix
  /** The same with hardness and chloride, mg/L, which take four times as long to follow. */
  mixAndMineralsIn(days: Days): MixAndMinerals
}

/** What a sump may hold: each quantity as a mixture of normals. */
export interface Mix {
  strength: readonly Part[]
  volume: readonly Part[]
}

export interface MixAndMinerals extends Mix {
  hardness: readonly Part[]
  chloride: readonly Part[]
}

/** A belief with its probability. */
export interface Weighed {
  belief: Belief
  probability: number
}

/** A belief with the course of events that led to it. */
export interface Followed extends Weighed {
  branch: Branch
}

/**
 * @param at not before the records that were taken in; a time before is taken as theirs
 * @throws {RangeError} a sump that no record describes
 */
export function untouched(shop: ShopEstimate, id: string, at: ShopTime): Untouched {
  const sump = shop.sumps.get(id)
  if (sump === undefined) throw new RangeError(`no sump ${id} in this estimate`)
  const now = Math.max(at, sump.at)
  const ofNow = later(shop, sump, now, mixSize)
  const mark = partsOf(ofNow, scale).map((part) => ({ ...part, mean: part.mean + Math.log(sump.plate) }))
  const mixes = new Map<Days, Mix>([[0, mixOf(ofNow, sump.plate)]])
  dropAll(ofNow)
  const whole = new Map<Days, MixAndMinerals>()
  const mixAndMineralsIn = (days: Days) => {
    const known = whole.get(days)
    if (known !== undefined) return known
    const then = later(shop, sump, now + days)
    const found = mixAndMineralsOf(then, sump.plate)
    dropAll(then)
    whole.set(days, found)
    return found
  }
  const mixIn = (days: Days) => {
    const known = mixes.get(days) ?? whole.get(days)
    if (known !== undefined) return known
    const then = later(shop, sump, now + days, mixSize)
    const found = mixOf(then, sump.plate)
    dropAll(then)
    mixes.set(days, found)
    return found
  }
  return { shop, sump, now, mark, mixIn, mixAndMineralsIn }
}

const mixOf = (then: readonly Weighed[], plate: number): Mix => ({
  strength: partsOf(then, strength),
  volume: volumeParts(then, plate),
})

export const mixAndMineralsOf = (then: readonly Weighed[], plate: number): MixAndMinerals => ({
  ...mixOf(then, plate),
  hardness: partsOf(then, hardness),
  chloride: partsOf(then, chloride),
})

/**
 * Every branch as it will stand at a time, untouched.
 *
 * @param few how many quantities, the first: all of them, or `mixSize`
 */
export function later(shop: ShopEstimate, sump: SumpState, at: ShopTime, few = size): Followed[] {
  const shares = probabilities(sump.branches)
  const time = exposureOf(shop, sump, sump.at, Math.max(at, sump.at))
  return sump.branches.flatMap((branch, i) =>
    spreadOut(branch.belief, time, few).map(({ belief, probability }) => {
      pass(belief, time, shop.priors.unrest)
      return { branch, belief, probability: probability * shares[i]! }
    }),
  )
}

/** Gives back beliefs that nobody looks at again. */
export function dropAll(weighed: readonly Weighed[]): void {
  for (const { belief } of weighed) dropBelief(belief)
}

/**
 * A belief as a mixture of three along the direction in which the level after a time is uncertain. What happens to a sump that runs low
 * is far from linear: a little more loss leaves a much stronger rest. Each third is followed by itself.
 *
 * Source: Gauss–Hermite quadrature of three points, M. Abramowitz, I. A. Stegun, 25.4.46.
 */
function spreadOut(whole: Belief, { days, evaporation: wet, carryOff: oily }: Exposure, few: number): Weighed[] {
  const belief = few === size ? copyBelief(whole) : copyFirst(whole, few)
  if (days < 2) return [{ belief, probability: 1 }]
  const { mean } = belief
  towardsLevel.fill(0)
  towardsLevel[fill] = 1
  towardsLevel[evaporation] = -Math.exp(mean[evaporation]!) * wet
  towardsLevel[carryOff] = -Math.exp(mean[carryOff]!) * oily
  const sd = Math.sqrt(spreadOf(belief, towardsLevel, 0))
  if (!(sd > 1e-6)) return [{ belief, probability: 1 }]
  const parts = learnEach(
    belief,
    towardsLevel,
    nodes.map(({ at }) => at * sd),
    0,
  )
  dropBelief(belief)
  return parts.map((part, i) => ({ belief: part, probability: nodes[i]!.probability }))
}

const towardsLevel = new Float64Array(size)
const nodes = [
  { at: -Math.sqrt(3), probability: 1 / 6 },
  { at: 0, probability: 2 / 3 },
  { at: Math.sqrt(3), probability: 1 / 6 },
] as const

export const partsOf = (weighed: readonly Weighed[], i: number): Part[] =>
  weighed.map(({ belief: { size: n, mean, cov }, probability }) => ({
    probability,
    mean: mean[i]!,
    sd: Math.sqrt(Math.max(cov[i * n + i]!, 0)),
  }))

/** Litres: fill × true mark, with what is known of both together. */
export const volumeParts = (weighed: readonly Weighed[], plate: number): Part[] =>
  weighed.map(({ belief: { size: n, mean, cov }, probability }) => {
    const mark = plate * Math.exp(mean[scale]!)
    const r = mean[fill]!
    const variance = cov[fill * n + fill]! + 2 * r * cov[fill * n + scale]! + r * r * cov[scale * n + scale]!
    return { probability, mean: r * mark, sd: mark * Math.sqrt(Math.max(variance, 0)) }
  })
