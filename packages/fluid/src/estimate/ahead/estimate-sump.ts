import { type Belief, copyBelief, dropBelief, learn, spreadOf } from '../../filter/index.ts'
import type { EstimatedDoubt, FiguresAhead, SumpEstimate } from '../answer-types.ts'
import { doubtOf } from '../doubts/doubt.ts'
import type { ShopTime } from '../events.ts'
import { type Exposure, pass } from '../flow.ts'
import { exposureOf } from '../passing.ts'
import { type Branch, probabilities, type ShopEstimate, type SumpState } from '../shop-estimate.ts'
import { carryOff, chloride, evaporation, fill, hardness, scale, size, strength } from '../state.ts'
import { workBetween } from '../work-calendar.ts'
import { figureOf, figureOfLogs, innerOf, type Part } from './mixture.ts'

/** The days over which evaporation and carry-off are given. */
const meanDays = 28

/**
 * Where a sump stands at a time, and where it will stand if nothing is poured or drawn. Changes nothing.
 *
 * @param at not before the records that were taken in; a time before is taken as theirs
 * @throws {RangeError} a sump that no record describes
 */
export function estimateSump(shop: ShopEstimate, id: string, at: ShopTime, aheadDays: readonly number[]): SumpEstimate {
  const sump = sumpIn(shop, id)
  const now = Math.max(at, sump.at)
  const ofNow = later(shop, sump, now)
  const { plate } = sump
  const answer: SumpEstimate = {
    now: {
      concentration: figureOf(partsOf(ofNow, strength), 0, 100),
      volume: figureOf(volumeParts(ofNow, plate), 0),
      hardness: figureOf(partsOf(ofNow, hardness), 0),
      chloride: figureOf(partsOf(ofNow, chloride), 0),
      evaporation: lossOf(shop, sump, ofNow, now, 'evaporation'),
      carryOff: lossOf(shop, sump, ofNow, now, 'carryOff'),
      markVolume: figureOfLogs(scaleParts(ofNow, plate)),
    },
    ahead: aheadDays.map((days) => {
      const then = later(shop, sump, now + days)
      const figures = figuresOf(then, plate, days)
      dropAll(then)
      return figures
    }),
    doubts: doubtsOf(sump, now),
    dataAt: sump.dataAt,
  }
  dropAll(ofNow)
  return answer
}

/** Figures of a day ahead. */
export function figuresOf(then: readonly Weighed[], plate: number, days: number): FiguresAhead {
  const concentration = partsOf(then, strength)
  const volume = volumeParts(then, plate)
  return {
    days,
    concentration: figureOf(concentration, 0, 100),
    volume: figureOf(volume, 0),
    hardness: figureOf(partsOf(then, hardness), 0),
    // Only drawings ask for it.
    get inner() {
      return { concentration: innerOf(concentration, 0), volume: innerOf(volume, 0) }
    },
  }
}

export function sumpIn({ sumps }: ShopEstimate, id: string): SumpState {
  const sump = sumps.get(id)
  if (sump === undefined) throw new RangeError(`no sump ${id} in this estimate`)
  return sump
}

/** Gives back beliefs that nobody looks at again. */
export function dropAll(weighed: readonly Weighed[]): void {
  for (const { belief } of weighed) dropBelief(belief)
}

/** A belief with its probability. */
export interface Weighed {
  belief: Belief
  probability: number
}

/** Every branch as it will stand at a time, untouched. */
export function later(shop: ShopEstimate, sump: SumpState, at: ShopTime): Weighed[] {
  const shares = probabilities(sump.branches)
  const time = exposureOf(shop, sump, sump.at, Math.max(at, sump.at))
  return sump.branches.flatMap(({ belief }: Branch, i) =>
    spreadOut(belief, time).map(({ belief: part, probability }) => {
      pass(part, time, shop.priors.unrest)
      return { belief: part, probability: probability * shares[i]! }
    }),
  )
}

/**
 * A belief as a mixture of three along the direction in which the level after a time is uncertain. What happens to a sump that runs low
 * is far from linear: a little more loss leaves a much stronger rest. Each third is followed by itself.
 *
 * Source: Gauss–Hermite quadrature of three points, M. Abramowitz, I. A. Stegun, 25.4.46.
 */
function spreadOut(belief: Belief, { days, evaporation: wet, carryOff: oily }: Exposure): Weighed[] {
  if (days < 2) return [{ belief: copyBelief(belief), probability: 1 }]
  const { mean } = belief
  towardsLevel.fill(0)
  towardsLevel[fill] = 1
  towardsLevel[evaporation] = -Math.exp(mean[evaporation]!) * wet
  towardsLevel[carryOff] = -Math.exp(mean[carryOff]!) * oily
  const sd = Math.sqrt(spreadOf(belief, towardsLevel, 0))
  if (!(sd > 1e-6)) return [{ belief: copyBelief(belief), probability: 1 }]
  return nodes.map(({ at, probability }) => {
    const part = copyBelief(belief)
    learn(part, towardsLevel, at * sd, 0)
    return { belief: part, probability }
  })
}

const towardsLevel = new Float64Array(size)
const nodes = [
  { at: -Math.sqrt(3), probability: 1 / 6 },
  { at: 0, probability: 2 / 3 },
  { at: Math.sqrt(3), probability: 1 / 6 },
] as const

export const partsOf = (weighed: readonly Weighed[], i: number): Part[] =>
  weighed.map(({ belief: { mean, cov }, probability }) => ({
    probability,
    mean: mean[i]!,
    sd: Math.sqrt(Math.max(cov[i * size + i]!, 0)),
  }))

/** Litres: fill × true mark, with what is known of both together. */
export const volumeParts = (weighed: readonly Weighed[], plate: number): Part[] =>
  weighed.map(({ belief: { mean, cov }, probability }) => {
    const mark = plate * Math.exp(mean[scale]!)
    const r = mean[fill]!
    const variance = cov[fill * size + fill]! + 2 * r * cov[fill * size + scale]! + r * r * cov[scale * size + scale]!
    return { probability, mean: r * mark, sd: mark * Math.sqrt(Math.max(variance, 0)) }
  })

const scaleParts = (weighed: readonly Weighed[], plate: number): Part[] =>
  partsOf(weighed, scale).map((part) => ({ ...part, mean: part.mean + Math.log(plate) }))

/** Litres a calendar day, the mean of the last four weeks, idle days included. */
function lossOf(
  { calendar, priors }: ShopEstimate,
  { plate, idles }: SumpState,
  weighed: readonly Weighed[],
  now: ShopTime,
  which: 'evaporation' | 'carryOff',
) {
  const work = Math.min(meanDays, workBetween(calendar, now - meanDays, now, idles))
  const days = work + priors.idle[which] * (meanDays - work)
  const i = which === 'evaporation' ? evaporation : carryOff
  const share = Math.log((plate * Math.max(days, 0.01)) / meanDays)
  return figureOfLogs(
    weighed.map(({ belief: { mean, cov }, probability }) => {
      const variance = cov[i * size + i]! + 2 * cov[i * size + scale]! + cov[scale * size + scale]!
      return { probability, mean: mean[i]! + mean[scale]! + share, sd: Math.sqrt(Math.max(variance, 0)) }
    }),
  )
}

/** Doubts that nobody answered, the oldest first. */
function doubtsOf(sump: SumpState, now: ShopTime): EstimatedDoubt[] {
  const open = sump.surprises.flatMap((surprise) => {
    const doubt = doubtOf(sump, surprise, true)
    return doubt === null ? [] : [doubt]
  })
  const closed = sump.doubts.map((doubt) => ({ ...doubt, open: isOpen(doubt, sump, now) }))
  return [...closed, ...open].sort((a, b) => a.at - b.at)
}

/** A figure that was set aside still counts as a doubt until the sump is read again. */
const isOpen = (doubt: EstimatedDoubt, sump: SumpState, now: ShopTime): boolean =>
  doubt.at === sump.lastReadingAt && now - doubt.at < 14
